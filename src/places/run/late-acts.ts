import type { Signal } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import type { BatchState } from '../../batch/state'
import { deviationPanel, intentionOfWay } from './deviation-model'
import { offersNow } from './deviation-offers'
import type { DraftBook } from './draft'
import type { Reckoner } from './typed'

/** What the run hands to what it fetches only when it is asked for. */
export interface ActsWorld {
  readonly app: App
  readonly handle: BatchHandle
  readonly drafts: DraftBook
  readonly reckoner: Reckoner
  readonly refusal: Signal<Refusal | null>
  readonly stepId: Signal<string | null>
  readonly stateNow: () => BatchState
  readonly act: (intention: Intention, done?: string, taken?: () => void) => Promise<boolean>
  readonly moveOn: (from: string) => void
}

/** Settles the deviation `open` of step `id` the chosen way, which must still be the one that was shown. */
export async function settleDeviation(
  { app, drafts, reckoner, refusal, stateNow, act }: ActsWorld,
  { id, open, shown }: { readonly id: string; readonly open: string; readonly shown: string | undefined },
): Promise<boolean> {
  const panel = deviationPanel(stateNow(), id, drafts.of(id), await offersNow(app, stateNow(), open))
  if (panel === null) return false
  // Stock or room may have gone since it was shown.
  if (shown !== undefined && panel.chosen?.kind !== shown) {
    refusal.value = { code: 'REMEDY_IMPOSSIBLE' }
    return false
  }
  const draft = drafts.of(id)
  const intention = intentionOfWay(panel, stateNow(), id, draft, reckoner)
  return intention !== null && act(intention, undefined, () => drafts.clear(id, draft))
}

/** Tries again to write what could not be saved; what is in now is typed no more. */
export async function retryUnsaved({ handle, drafts, stepId, moveOn }: ActsWorld): Promise<void> {
  const waited = handle.unsaved.peek().map(({ intention }) => intention)
  await handle.retry()
  const left = new Set(handle.unsaved.peek().map(({ intention }) => intention))
  for (const intention of waited) {
    if (left.has(intention) || !('step' in intention) || intention.step === undefined) continue
    drafts.clear(intention.step, drafts.of(intention.step))
    if (intention.step === stepId.peek()) moveOn(intention.step)
  }
}
