import { type Asymptote, fitNewton, temperatureAt } from '../trade/newton'
import { type Quantile, roomAsymptote } from '../trade/thermal'
import { forecastOf } from './forecast'
import type { PlannedStep } from './plan'
import { isDone, openSteps, vesselNow } from './progress'
import type { BatchState } from './state'
import type { KindOf } from './step'
import { roomOf } from './thermal-course'

/** Two phases that, as they go now, will not be near enough to each other when the later one is ready. ms UTC, °C. */
export interface MissedMeeting {
  readonly step: string
  readonly atMs: number
  readonly into: { readonly vessel: string; readonly temperatureC: number }
  readonly from: { readonly vessel: string; readonly temperatureC: number }
  readonly differenceC: number
  readonly mostC: number
}

/** How long it is worth waiting for the two to come nearer. */
const waitMinutes = 60

/** Combinations ahead of this batch that concern a step's vessel and will not come off as things go. */
export function missedMeetings(
  state: BatchState,
  { step }: PlannedStep,
  nowMs: number,
  quantile: Quantile,
): readonly MissedMeeting[] {
  const vessel = vesselNow(state, step.vessel)
  return state.plan.steps.flatMap((planned) => {
    const combine = planned.step
    if (combine.kind !== 'combine' || combine.maxDifferenceC === undefined || isDone(state, planned.id)) return []
    const pair = [vesselNow(state, combine.vessel), vesselNow(state, combine.from)]
    return pair.includes(vessel) ? (missedMeeting(state, planned.id, combine, nowMs, quantile) ?? []) : []
  })
}

function missedMeeting(
  state: BatchState,
  id: string,
  { vessel, from, maxDifferenceC: mostC = 0, bothAtLeastC = Number.NEGATIVE_INFINITY }: KindOf<'combine'>,
  nowMs: number,
  quantile: Quantile,
): MissedMeeting | null {
  const paths = [vessel, from].map((each) => pathOf(state, vesselNow(state, each), nowMs, quantile))
  const [into, other] = paths
  if (!into || !other) return null
  const readyMs = Math.max(nowMs, into.readyMs, other.readyMs)
  for (let minutes = 0; minutes <= waitMinutes; minutes += 1) {
    const atMs = readyMs + minutes * 60_000
    const [a, b] = [into.at(atMs), other.at(atMs)]
    if (Math.abs(a - b) <= mostC && Math.min(a, b) >= bothAtLeastC - 1) return null
  }
  const [a, b] = [into.at(readyMs), other.at(readyMs)]
  const differenceC = Math.abs(a - b)
  if (differenceC <= mostC) return null
  return {
    step: id,
    atMs: readyMs,
    into: { vessel: into.vessel, temperatureC: a },
    from: { vessel: other.vessel, temperatureC: b },
    differenceC,
    mostC,
  }
}

interface Path {
  readonly vessel: string
  readonly readyMs: number
  readonly at: (atMs: number) => number
}

/** Where a vessel is going: up to its figure and held there, down towards the room, or staying; null while unknown. */
function pathOf(state: BatchState, vessel: string, nowMs: number, quantile: Quantile): Path | null {
  const readings = state.vessels.get(vessel)?.readings ?? []
  const last = readings.at(-1)
  if (last === undefined) return null
  const heating = openSteps(state).find(({ step }) => step.kind === 'heat' && vesselNow(state, step.vessel) === vessel)
  const forecast = heating ? forecastOf(state, heating, quantile) : null
  if (forecast !== null && forecast.outlook.kind !== 'reached') {
    if (!forecast.reach || forecast.outlook.kind !== 'time') return null
    return { vessel, readyMs: forecast.reach.likelyMs, at: () => forecast.course.targetC }
  }
  const falling = fallOf(readings, roomOf(state))
  return { vessel, readyMs: nowMs, at: falling ?? (() => last.temperatureC) }
}

/** A fall that shows in three readings since the hottest; null while it does not. */
function fallOf(
  readings: readonly { readonly atMs: number; readonly temperatureC: number }[],
  roomC: number | undefined,
): ((atMs: number) => number) | null {
  const hottest = readings.reduce((best, each, index) => {
    return each.temperatureC >= (readings[best]?.temperatureC ?? 0) ? index : best
  }, 0)
  const since = readings.slice(hottest)
  const [first, last] = [since[0], since.at(-1)]
  if (since.length < 3 || !first || !last || first.temperatureC - last.temperatureC < leastFallC) return null
  const asymptote: Asymptote = roomC === undefined ? { kind: 'prior', meanC: 21, sdC: 4 } : roomAsymptote(roomC)
  const minutesOf = (atMs: number): number => (atMs - first.atMs) / 60_000
  const fit = fitNewton(
    since.map(({ atMs, temperatureC }) => ({ atMin: minutesOf(atMs), temperatureC })),
    asymptote,
  )
  return fit.ok ? (atMs) => temperatureAt(fit.value, minutesOf(atMs)) : null
}

/** More than three readings' noise. */
const leastFallC = 2
