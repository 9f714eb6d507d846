import { useRun } from '../run-context'

export interface StepClock {
  readonly timer: string
  readonly deadlineAtMs: number
  /** Negative is how late. */
  readonly leftMs: number
}

/** The timer of a step, running or over; null before it is started. */
export function useClock(stepId: string): StepClock | null {
  const run = useRun()
  const { state } = run.handle.view.value
  const timer = state.timers.get(state.steps.get(stepId)?.timer ?? '')
  if (timer === undefined) return null
  return {
    timer: timer.id,
    deadlineAtMs: timer.deadlineAtMs,
    leftMs: timer.deadlineAtMs - run.app.nowMs.value,
  }
}
