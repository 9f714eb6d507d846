import {
  type Bound,
  predictionAt,
  type Quantile,
  type ShelfLife,
  shelfLifeOf,
  type Trend,
  trendOf,
} from '../trade/stability'
import { dayMs } from './pulls'
import { unlike } from './read-unlike'
import { restedOf, type Stability } from './stability'
import { type Condition, type Measure, readsNumber } from './stability-plan'
import type { BatchState } from './state'

/** How one measure goes under one condition. */
export interface Course {
  readonly measure: Measure
  readonly condition: Condition
  readonly points: readonly CoursePoint[]
  /** Absent where no line can be told: too few results, all of one time, or jars that go through cycles. */
  readonly drift?: Drift
}

/** `at` is days since the jars were set aside, cycles where they go through those. */
export interface CoursePoint {
  readonly at: number
  readonly value: number
  /** The batch's own rested result, which every condition starts from. */
  readonly start?: true
  /** Read with another spindle, at another speed or temperature than is asked for. */
  readonly unlike?: true
}

export interface Drift {
  readonly trend: Trend
  readonly shelf: ShelfLife
  /** Where one more result is expected with 95 %, so many days on. */
  readonly bandAt: (days: number) => Bound
  /** Why what it says is an indication only; empty where it is more. */
  readonly indication: readonly Indication[]
}

/** Few results; results not all read alike; a limit met further on than the data carry; what ages faster than a shelf. */
export type Indication = 'few' | 'unlike' | 'beyond' | 'accelerated'

/** Mean length of a month, days. */
export const monthDays = 365.25 / 12

/** With fewer results the band is wider than the limits of most measures. */
const enoughPulls = 5

/** Every measure that is a number, under every condition, in the order of the plan. */
export function coursesOf(state: BatchState, stability: Stability, quantile: Quantile): readonly Course[] {
  const { plan } = stability
  return plan.measures.filter(readsNumber).flatMap((measure) =>
    plan.conditions.map((condition): Course => {
      const points = pointsOf(state, stability, measure, condition)
      const drift = condition.cycles ? null : driftOf(points, measure, condition, quantile)
      return { measure, condition, points, ...(drift === null ? {} : { drift }) }
    }),
  )
}

function pointsOf(
  state: BatchState,
  { plan, pulls, standards }: Stability,
  measure: Measure,
  condition: Condition,
): readonly CoursePoint[] {
  const own = pulls
    .filter((pull) => pull.condition === condition)
    .flatMap(({ at, readings }) =>
      readings.flatMap(({ measure: read, atMs, body }) => {
        if (read !== measure || body.value === undefined) return []
        const days = Math.max(0, (atMs - plan.startsAtMs) / dayMs)
        const isUnlike = Object.keys(unlike(standards.get(measure.id) ?? {}, body)).length > 0
        return [{ at: condition.cycles ? at : days, value: body.value, ...(isUnlike ? { unlike: true as const } : {}) }]
      }),
    )
  const hasStart = pulls.some(
    ({ at, condition: its, readings }) => its === condition && at === 0 && readings.length > 0,
  )
  const start = hasStart ? [] : startOf(state, measure)
  return [...start, ...own].sort((one, other) => one.at - other.at)
}

function startOf(state: BatchState, { id }: Measure): readonly CoursePoint[] {
  const value = restedOf(state, id)?.value
  return value === undefined ? [] : [{ at: 0, value, start: true }]
}

function driftOf(
  points: readonly CoursePoint[],
  { limits }: Measure,
  { accelerated }: Condition,
  quantile: Quantile,
): Drift | null {
  const found = trendOf(points.map(({ at, value }) => ({ atMonths: at / monthDays, value })))
  if (!found.ok) return null
  const trend = found.value
  const { min: lower, max: upper } = limits ?? {}
  // With a limit on each side nobody knew beforehand which way it would go.
  const direction = lower !== undefined && upper !== undefined ? 'either way' : 'known'
  const shelf = shelfLifeOf(trend, { lower, upper }, quantile, direction)
  const indication: Indication[] = [
    ...(trend.count < enoughPulls ? (['few'] as const) : []),
    ...(points.some((point) => point.unlike) ? (['unlike'] as const) : []),
    ...(shelf.supported !== null && shelf.supported > shelf.reportable ? (['beyond'] as const) : []),
    ...(accelerated ? (['accelerated'] as const) : []),
  ]
  return { trend, shelf, indication, bandAt: (days) => predictionAt(trend, days / monthDays, quantile) }
}
