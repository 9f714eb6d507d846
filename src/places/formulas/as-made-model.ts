import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { madeOtherwise } from '../../batch/as-made'
import type { Revision } from '../../batch/formula'
import type { BatchHeader } from '../../batch/header'
import type { MadeOtherwise } from '../../batch/made-otherwise'
import { takeOver } from './as-made-draft'
import { draftOf } from './draft'
import { draftKey, keptDraft } from './draft-keeping'

/** What a batch did otherwise than its revision, and which of it the next revision takes over. */
export interface AsMadeModel {
  /** Null while it is read; `missing` where the batch or its formula is not here. */
  readonly header: ReadonlySignal<BatchHeader | null>
  readonly missing: ReadonlySignal<boolean>
  readonly differences: ReadonlySignal<readonly MadeOtherwise[]>
  readonly chosen: ReadonlySignal<ReadonlySet<string>>
  /** A change of this formula was begun: taking over throws it away. */
  readonly hasBegun: ReadonlySignal<boolean>
  readonly load: () => Promise<void>
  readonly toggle: (id: string) => void
  /** Begins the next revision with what was chosen, and opens it. */
  readonly take: () => Promise<void>
}

export function createAsMade(app: App, formulaId: string, batchId: string): AsMadeModel {
  const header = signal<BatchHeader | null>(null)
  const missing = signal(false)
  const differences = signal<readonly MadeOtherwise[]>([])
  const chosen = signal<ReadonlySet<string>>(new Set())
  const hasBegun = signal(false)
  return {
    header,
    missing: computed(
      () => missing.value || (app.catalogue.loaded.value && !app.catalogue.formulas.value.has(formulaId)),
    ),
    differences,
    chosen,
    hasBegun,
    load: async () => {
      const handle = await app.batches.open(batchId)
      hasBegun.value = (await keptDraft(app.drafts, formulaId)) !== null
      if (handle === null) {
        missing.value = true
        return
      }
      const { state } = handle.view.value
      differences.value = madeOtherwise(state, asWritten(app, formulaId, state.header))
      chosen.value = new Set(differences.value.filter(({ beyond }) => beyond).map(({ id }) => id))
      header.value = state.header
    },
    toggle: (id) => {
      const next = new Set(chosen.value)
      if (!next.delete(id)) next.add(id)
      chosen.value = next
    },
    take: async () => {
      const formula = app.catalogue.formulas.value.get(formulaId)
      if (formula === undefined || header.value === null) return
      const { code } = header.value
      const revision = asWritten(app, formulaId, header.value)
      const mark = app.settings.decimalMark.value
      const first = draftOf(formula, revision, mark)
      const note = `From batch ${code} as it was made.`
      const draft = takeOver(
        { ...first, head: { ...first.head, values: { ...first.head.values, note } } },
        differences.value.filter(({ id }) => chosen.value.has(id)),
        mark,
        () => app.ids.next(),
      )
      await app.drafts.write(draftKey(formulaId), JSON.stringify(draft))
      app.go({ place: 'formulas', formula: formulaId })
    },
  }
}

/** The revision that the batch was made by; one that pre-mixes were worked into stands in the formula as it was before. */
function asWritten(app: App, formulaId: string, { revision, premixes = [] }: BatchHeader): Revision {
  if (premixes.length === 0) return revision
  const kept = app.catalogue.formulas.value.get(formulaId)?.revisions
  return kept?.find(({ number }) => number === revision.number) ?? revision
}
