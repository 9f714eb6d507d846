import type { App, BatchHandle } from '../../app/app'
import type { PlannedStep } from '../../batch/plan'
import { isDone, nextStep, statusOf } from '../../batch/progress'
import type { BatchState } from '../../batch/state'

/** The step that the address names, else the one that was in hand and is not done, else what is to be done next. */
export const firstStep = (app: App, handle: BatchHandle, lastStep: string | null): string | null => {
  const route = app.route.peek()
  const { state } = handle.view.peek()
  const asked = route.place === 'run' && route.batch === handle.id ? route.step : undefined
  if (asked !== undefined && state.plan.byId.has(asked)) return asked
  if (lastStep !== null && state.plan.byId.has(lastStep) && !isDone(state, lastStep)) return lastStep
  return nextStep(state)?.id ?? null
}

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
