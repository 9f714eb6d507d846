import { sentenceOf } from '../../../app/refusals'
import type { Intention } from '../../../batch/intention'
import { useRun } from '../run-context'

interface SheetDraft {
  readonly text: (field: string) => string
  readonly set: (field: string, text: string) => void
  /** Sends it; closes and forgets what was typed only where it was taken. */
  readonly send: (intention: Intention, done?: string) => Promise<boolean>
  /** Why it was refused, in a sentence. */
  readonly refused: string | undefined
}

/** What is typed in a sheet outlives it: closed by mistake, it opens again as it was. */
export function useSheetDraft(name: string, onClose: () => void): SheetDraft {
  const run = useRun()
  const key = `sheet:${name}`
  const refusal = run.refusal.value
  return {
    text: (field) => run.drafts.of(key).fields[field] ?? '',
    set: (field, text) => run.drafts.setField(key, field, text),
    send: async (intention, done) => {
      const taken = await run.act(intention, done)
      if (taken) {
        run.drafts.clear(key, run.drafts.of(key))
        onClose()
      }
      return taken
    },
    refused: refusal === null ? undefined : sentenceOf(refusal),
  }
}
