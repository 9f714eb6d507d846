import type { PlannedStep } from '../../batch/plan'
import { nextStep, statusOf } from '../../batch/progress'
import type { BatchState } from '../../batch/state'

/**
 * What to take in hand once a step is done: the other weighings of its phase first, since one stands at the balance;
 * then the next in the plan, else whatever waits.
 */
export const stepAfter = (state: BatchState, doneId: string): PlannedStep | null => {
  const done = state.plan.byId.get(doneId)
  if (done === undefined) return nextStep(state)
  const open = state.plan.steps.filter(({ id }) => workable.has(statusOf(state, id)))
  const after = open.filter(({ index }) => index > done.index)
  const isNeighbour = ({ step }: PlannedStep) => step.kind === 'weigh' && step.phase === done.step.phase
  return after.find(isNeighbour) ?? open.find(isNeighbour) ?? after[0] ?? nextStep(state)
}

const workable = new Set(['open', 'part', 'over'])

/** The step at which something that these entries led to waits for a way on. */
export const noticedBy = (state: BatchState, entries: readonly string[]): string | undefined =>
  [...state.deviations.values()].find((each) => !each.settled && each.cause && entries.includes(each.entry))?.step
