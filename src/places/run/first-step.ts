import type { App, BatchHandle } from '../../app/app'
import { isDone, nextStep } from '../../batch/progress'

/** The step that the address names, else the one that was in hand and is not done, else what is to be done next. */
export const firstStep = (app: App, handle: BatchHandle, lastStep: string | null): string | null => {
  const route = app.route.peek()
  const { state } = handle.view.peek()
  const asked = route.place === 'run' && route.batch === handle.id ? route.step : undefined
  if (asked !== undefined && state.plan.byId.has(asked)) return asked
  if (lastStep !== null && state.plan.byId.has(lastStep) && !isDone(state, lastStep)) return lastStep
  return nextStep(state)?.id ?? null
}
