import type { Micrograms } from '../trade/mass'
import { msOf } from './instant'
import type { PlannedStep } from './plan'
import { isDone, statusOf, targetOf, vesselNow } from './progress'
import type { BatchState } from './state'

/** What can be weighed into cups while a vessel cools, and how long that takes. */
export interface WaitingLines {
  readonly steps: readonly string[]
  readonly phase: string
  readonly massUg: Micrograms
  readonly minutes: number
  /** Whether the time is this batch's own pace, or the usual one. */
  readonly ownPace: boolean
}

/** What weighing a line takes where the batch itself does not tell. */
const usualMinutes = 1.5
/** A longer pause between two weighings was something else. */
const longestPauseMinutes = 6
const fewestPauses = 3

/** The lines still to weigh into cups that are tipped into this vessel after the step; null where there are none. */
export function waitingLines(state: BatchState, { id, step }: PlannedStep): WaitingLines | null {
  const vessel = vesselNow(state, step.vessel)
  const after = state.plan.steps.slice(state.plan.steps.findIndex((planned) => planned.id === id) + 1)
  const cups = after.flatMap(({ id: charge, step: each }) =>
    each.kind === 'charge' && vesselNow(state, each.vessel) === vessel && !isDone(state, charge) ? [each.cup] : [],
  )
  const weighings = state.plan.steps.filter(
    (planned) =>
      planned.step.kind === 'weigh' &&
      cups.includes(planned.step.vessel) &&
      ['open', 'part'].includes(statusOf(state, planned.id)),
  )
  const first = weighings[0]
  if (first === undefined) return null
  const left = weighings.map(
    (planned) => (targetOf(state, planned.id) ?? 0) - (state.steps.get(planned.id)?.countedUg ?? 0),
  )
  const pace = paceOf(state)
  return {
    steps: weighings.map((planned) => planned.id),
    phase: first.step.phase,
    massUg: left.reduce((sum, each) => sum + Math.max(0, each), 0),
    minutes: (pace ?? usualMinutes) * weighings.length,
    ownPace: pace !== null,
  }
}

/** Minutes from one weighing to the next in this batch, pauses left out; the median. */
function paceOf(state: BatchState): number | null {
  const moments = state.entries.flatMap(({ event, struck }) =>
    !struck && event.kind === 'weighed' ? [msOf(event.at)] : [],
  )
  const pauses = moments
    .slice(1)
    .map((atMs, index) => (atMs - (moments[index] ?? atMs)) / 60_000)
    .filter((minutes) => minutes > 0 && minutes <= longestPauseMinutes)
    .sort((a, b) => a - b)
  return pauses.length < fewestPauses ? null : (pauses[Math.floor(pauses.length / 2)] ?? null)
}
