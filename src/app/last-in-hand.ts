import { nextActionOf } from '../batch/next-action'
import { isDone } from '../batch/progress'
import type { BatchState } from '../batch/state'
import type { BatchSummary } from '../batch/summary'
import { askOf } from '../batch/wording'
import type { App } from './app'

/** The step that was last on the screen of a batch, as the bench names it; `done` is how many steps were done then. */
export type LastInHand = NonNullable<BatchSummary['next']> & { readonly done: number }

const keyOf = (batch: string): string => `in-hand-says:${batch}`

/** Kept beside the batch, not in it: looking at a step is no entry. */
export function keepLast(drafts: App['drafts'], state: BatchState, step: string): void {
  const planned = state.plan.byId.get(step)
  if (planned === undefined || isDone(state, step)) return
  const last: LastInHand = {
    step,
    phase: planned.step.phase,
    text: nextActionOf(state, planned),
    place: planned.step.instruction ?? askOf(planned.step, state.header),
    done: state.plan.steps.filter(({ id }) => isDone(state, id)).length,
  }
  void drafts.write(keyOf(state.header.id), JSON.stringify(last))
}

/** What was kept, by batch. It counts for as long as no step was done since: then the bench names what comes next. */
export async function readLast(
  drafts: App['drafts'],
  batches: readonly BatchSummary[],
): Promise<ReadonlyMap<string, LastInHand>> {
  const found = await Promise.all(
    batches.map(async ({ id }) => [id, await drafts.read(keyOf(id)).catch(() => null)] as const),
  )
  // Written by this module alone.
  return new Map(found.flatMap(([id, text]) => (text ? [[id, JSON.parse(text) as LastInHand] as const] : [])))
}
