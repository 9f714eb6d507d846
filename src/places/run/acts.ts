import { batch, type Signal } from '@preact/signals'
import { whenIdle } from '../../app/after-paint'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import { isDone } from '../../batch/progress'
import type { BatchState } from '../../batch/state'
import type { FrameBehind } from './a-frame-behind'
import type { Busy } from './busy'
import { deviationPanel, intentionOfWay } from './deviation-model'
import { offersNow } from './deviation-offers'
import type { DraftBook } from './draft'
import { noticedBy, stepAfter } from './steps-that-follow'
import { strikableOf } from './strikable'
import type { Reckoner } from './typed'

/** What the run hands to what a person does in it: fetched once the step in hand is on the screen. */
export interface ActsWorld {
  readonly app: App
  readonly handle: BatchHandle
  readonly drafts: DraftBook
  readonly reckoner: Reckoner
  readonly refusal: Signal<Refusal | null>
  readonly stepId: Signal<string | null>
  readonly busy: Busy
  readonly behind: FrameBehind
  readonly stateNow: () => BatchState
  readonly show: (id: string | null) => void
  readonly take: (id: string) => void
  readonly act: (intention: Intention, more?: ActWords) => Promise<boolean>
}

export interface ActWords {
  /** With them the act can be undone for six seconds. */
  readonly done?: string | undefined
  /** Once it was taken, before the screen moves on. */
  readonly taken?: () => void
}

/** Sends an intention, which the run is busy with already, and moves on where that ended the step `from`. */
export async function actIn(
  world: ActsWorld,
  intention: Intention,
  { done, taken, from }: ActWords & { readonly from: string | null },
): Promise<boolean> {
  const { app, handle, refusal, stepId, busy, behind, stateNow, take } = world
  const follow = (ids: readonly string[]) => {
    busy.end()
    taken?.()
    const entries = strikableOf(stateNow(), ids)
    if (done !== undefined && entries.length > 0)
      app.justDone.value = { text: done, atMs: app.clock.nowMs(), undo: () => undo(world, entries, from) }
    const noticed = noticedBy(stateNow(), ids)
    if (noticed !== undefined) take(noticed)
    else if (from !== null && stepId.peek() === from) moveOn(world, from)
  }
  let followed: Promise<void> | undefined
  const recorded = (ids: readonly string[]) => {
    followed = behind.after(() => follow(ids))
  }
  const outcome = await handle.intend(intention, recorded).finally(() => followed ?? busy.end())
  if (!outcome.ok) {
    // What could not be saved has its own bar, and stays typed as well: the screen is then its only copy.
    const isKept = handle.unsaved.peek().some((each) => each.intention === intention)
    if (!isKept) refusal.value = outcome.refusal
    return false
  }
  // What was held, or left nothing to write, did not change the batch.
  if (followed === undefined) batch(() => follow(outcome.entries))
  await followed
  return true
}

/** Last written, first struck: what came of an earlier entry goes before it. */
async function undo({ app, act, take }: ActsWorld, entries: readonly string[], step: string | null): Promise<void> {
  app.justDone.value = null
  for (const entry of [...entries].reverse()) await act({ do: 'strike', entry, reason: 'undone at once' })
  if (step !== null) take(step)
}

function moveOn(world: ActsWorld, from: string): void {
  const state = world.stateNow()
  if (isDone(state, from)) takeNext(world, stepAfter(state, from)?.id ?? null)
}

/** The step is shown first; where to come back to is noted when it stands on the screen: an address takes its time. */
function takeNext({ app, handle, stepId, show }: ActsWorld, id: string | null): void {
  show(id)
  void whenIdle().then(() => {
    if (id !== null && stepId.peek() === id && isHere(app, handle)) app.go({ place: 'run', batch: handle.id, step: id })
  })
}

const isHere = (app: App, handle: BatchHandle): boolean => {
  const route = app.route.peek()
  return route.place === 'run' && route.batch === handle.id
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
  return intention !== null && act(intention, { taken: () => drafts.clear(id, draft) })
}

/** Tries again to write what could not be saved; what is in now is typed no more. */
export async function retryUnsaved(world: ActsWorld): Promise<void> {
  const { handle, drafts, stepId } = world
  const waited = handle.unsaved.peek().map(({ intention }) => intention)
  await handle.retry()
  const left = new Set(handle.unsaved.peek().map(({ intention }) => intention))
  for (const intention of waited) {
    if (left.has(intention) || !('step' in intention) || intention.step === undefined) continue
    drafts.clear(intention.step, drafts.of(intention.step))
    if (intention.step === stepId.peek()) moveOn(world, intention.step)
  }
}
