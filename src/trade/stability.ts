import type { Result } from './result'

/** One result of a kept sample: months since it was set aside, and the measure in its own unit. */
export interface Pull {
  readonly atMonths: number
  readonly value: number
}

/** A straight line through the pulls by ordinary least squares. `slope` per month, `s` the residual deviation. */
export interface Trend {
  readonly intercept: number
  readonly slope: number
  readonly s: number
  readonly slopeError: number
  readonly count: number
  readonly meanMonths: number
  /** Sum of squares of the times about their mean, months². */
  readonly sxx: number
  readonly lastMonths: number
}

export type TrendRefusal =
  | { readonly code: 'TREND_TOO_FEW'; readonly count: number }
  | { readonly code: 'TREND_ONE_TIME' }

/** The p quantile of Student's t: handed in, as the library behind it is fetched late. */
export type Quantile = (p: number, degreesOfFreedom: number) => number

export interface Bound {
  readonly fit: number
  readonly low: number
  readonly high: number
}

export interface ShelfLife {
  /** Months at which the bound on the mean meets each limit; 0 where it is out already, null where not within 60. */
  readonly crossLower: number | null
  readonly crossUpper: number | null
  /** The earlier of the two. */
  readonly supported: number | null
  /** What may be said: never past twice the time observed, nor a year beyond it (ICH Q1E). */
  readonly reportable: number
}

/** Least pulls that a line and its deviation can be told from. */
export const leastPulls = 3

/** No crossing is looked for later than this, months. */
export const horizonMonths = 60

/** A year past the last pull is the furthest that ICH Q1E lets a trend be carried. */
const furthestBeyondMonths = 12

/** Ordinary least squares of the values on time; n ≥ 3, at two times at least (textbook). */
export function trendOf(pulls: readonly Pull[]): Result<Trend, TrendRefusal> {
  const count = pulls.length
  if (count < leastPulls) return { ok: false, refusal: { code: 'TREND_TOO_FEW', count } }
  const meanMonths = mean(pulls.map(({ atMonths }) => atMonths))
  const meanValue = mean(pulls.map(({ value }) => value))
  const sxx = sum(pulls.map(({ atMonths }) => (atMonths - meanMonths) ** 2))
  if (sxx === 0) return { ok: false, refusal: { code: 'TREND_ONE_TIME' } }
  const slope = sum(pulls.map(({ atMonths, value }) => (atMonths - meanMonths) * (value - meanValue))) / sxx
  const intercept = meanValue - slope * meanMonths
  const residuals = sum(pulls.map(({ atMonths, value }) => (value - intercept - slope * atMonths) ** 2))
  const s = Math.sqrt(residuals / (count - 2))
  const lastMonths = Math.max(...pulls.map(({ atMonths }) => atMonths))
  return {
    ok: true,
    value: { intercept, slope, s, slopeError: s / Math.sqrt(sxx), count, meanMonths, sxx, lastMonths },
  }
}

/** Where one further result is expected at a time, with 95 % (two-sided prediction band). */
export function predictionAt(trend: Trend, atMonths: number, quantile: Quantile): Bound {
  const fit = valueAt(trend, atMonths)
  const half = quantile(0.975, trend.count - 2) * trend.s * Math.sqrt(1 + leverage(trend, atMonths))
  return { fit, low: fit - half, high: fit + half }
}

/**
 * When the confidence bound on the mean meets the limits (ICH Q1E). One-sided 95 % where it was known beforehand which
 * way the measure drifts; `'either way'` takes two-sided 95 % for both limits.
 */
export function shelfLifeOf(
  trend: Trend,
  limits: { readonly lower?: number | undefined; readonly upper?: number | undefined },
  quantile: Quantile,
  direction: 'known' | 'either way' = 'known',
): ShelfLife {
  const t = quantile(direction === 'known' ? 0.95 : 0.975, trend.count - 2)
  const crossLower = limits.lower === undefined ? null : crossing(trend, limits.lower, -1, t)
  const crossUpper = limits.upper === undefined ? null : crossing(trend, limits.upper, 1, t)
  const found = [crossLower, crossUpper].filter((months) => months !== null)
  const supported = found.length === 0 ? null : Math.min(...found)
  const { lastMonths } = trend
  const carried = Math.min(2 * lastMonths, lastMonths + furthestBeyondMonths)
  return { crossLower, crossUpper, supported, reportable: Math.min(supported ?? carried, carried) }
}

/** First time at which the line plus `side` × its half-width reaches the limit: a root of a quadratic. */
function crossing(trend: Trend, limit: number, side: 1 | -1, t: number): number | null {
  const gapAt = (months: number) =>
    side * (limit - valueAt(trend, months)) - t * trend.s * Math.sqrt(leverage(trend, months))
  if (gapAt(0) <= 0) return 0
  const { slope, meanMonths, sxx, count } = trend
  // About the mean time u: (away + slope·u)² = width²·(1/n + u²/Sxx). Its discriminant is written out, as taking it as
  // a difference of products loses a line without residuals.
  const width2 = (t * trend.s) ** 2
  const away = valueAt(trend, meanMonths) - limit
  const a = slope ** 2 - width2 / sxx
  const half = slope * away
  const c = away ** 2 - width2 / count
  const inner = width2 * (slope ** 2 / count + away ** 2 / sxx - width2 / (count * sxx))
  if (inner < 0) return null
  // A root on the line itself may fall on its other side by the rounding of the arithmetic, of whichever is greater.
  const rounding = 1e-9 * Math.max(Math.abs(limit), Math.abs(valueAt(trend, meanMonths)))
  const q = -(half + (half < 0 ? -1 : 1) * Math.sqrt(inner))
  const first = [q / a, c / q]
    .map((aboutMean) => aboutMean + meanMonths)
    .filter((months) => months >= 0 && months <= horizonMonths && side * (limit - valueAt(trend, months)) >= -rounding)
    .sort((one, other) => one - other)[0]
  return first ?? null
}

const valueAt = ({ intercept, slope }: Trend, months: number): number => intercept + slope * months

const leverage = ({ count, meanMonths, sxx }: Trend, months: number): number =>
  1 / count + (months - meanMonths) ** 2 / sxx

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

const mean = (values: readonly number[]): number => sum(values) / values.length
