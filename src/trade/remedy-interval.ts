import type { Micrograms } from './mass'
import { type Allowing, type Asking, type Limit, type RemedyProblem, type RemedyRefusal, sumOf } from './remedy-model'
import { type Scaled, same } from './remedy-scaled'

/** The totals at which every line can lie in its range, in units of the planned total; or why there are none. */
export type FeasibleTotals =
  | { readonly feasible: true; readonly low: number; readonly high: number; readonly lowBy: readonly Limit[] }
  | { readonly feasible: false; readonly why: RemedyRefusal }

/**
 * One condition couples the lines, that they sum to the total, so the feasible totals M are one interval: m_i ÷ hi_i ≤ M
 * ≤ (m_i + s_i) ÷ lo_i for every line, max(least, contents) ≤ M ≤ capacity, and ΣL_i(M) ≤ M ≤ ΣU_i(M) with
 * L_i = max(m_i, lo_i·M), U_i = min(m_i + s_i, hi_i·M). Both gaps are convex and piecewise linear in M.
 */
export function feasibleTotals(problem: RemedyProblem, scaled: Scaled): FeasibleTotals {
  const refused = refusedAtTheDoor(problem)
  if (refused) return { feasible: false, why: refused }
  const { lower, upper } = boundsOfTotal(problem, scaled)
  if (lower.at > upper.at + same) return { feasible: false, why: linesConflict(problem, lower, upper) }

  const top = Math.max(lower.at, upper.at)
  const fill = (total: number): number => sumOf(lowestAt(scaled, total)) - total
  const lack = (total: number): number => total - sumOf(highestAt(scaled, total))
  const filled = spanOf(fill, breakpoints(scaled.held, scaled.low), lower.at, top)
  if (filled.low > filled.high) return { feasible: false, why: minimumsExceed(problem, scaled, filled.nearest) }
  const reached = spanOf(lack, breakpoints(scaled.reach, scaled.high), lower.at, top)
  if (reached.low > reached.high)
    return { feasible: false, why: maximumsBelow(problem, scaled, reached.nearest, lower.by) }

  const low = Math.max(filled.low, reached.low)
  const high = Math.min(filled.high, reached.high)
  // Exact sums never come here, for where ΣL_i > M > ΣU_i some line has L_i > U_i; only rounding can part the spans.
  if (low > high + same) {
    const inUg = (total: number): Micrograms => Math.round(total * problem.totalUg)
    return { feasible: false, why: { code: 'CLOSURE_CONFLICT', neededUg: inUg(low), allowedUg: inUg(high) } }
  }
  const lowBy =
    low <= lower.at + same
      ? [lower.by]
      : filled.low >= reached.low
        ? atLeast(scaled, low)
        : atMost(problem, scaled, low)
  return { feasible: true, low, high: Math.max(low, high), lowBy }
}

/** The least and the most of every line at a total, where all ranges hold. */
export const lowestAt = ({ held, low }: Scaled, total: number): number[] =>
  held.map((mass, index) => Math.max(mass, (low[index] ?? 0) * total))

export const highestAt = ({ reach, high }: Scaled, total: number): number[] =>
  reach.map((mass, index) => Math.min(mass, (high[index] ?? 1) * total))

/** A bound on the total and the limit that sets it. */
interface Bound<By> {
  readonly at: number
  readonly by: By
}

function refusedAtTheDoor({ lines }: RemedyProblem): RemedyRefusal | undefined {
  const contradictory = lines.find(({ low, high }) => low > high)
  if (contradictory) {
    const { id, low, high } = contradictory
    return { code: 'RANGE_CONTRADICTORY', id, low, high }
  }
  const stray = lines.find(({ high, massUg }) => high <= 0 && massUg > 0)
  return stray && { code: 'LINE_NOT_IN_FORMULA', id: stray.id }
}

function boundsOfTotal(
  problem: RemedyProblem,
  scaled: Scaled,
): { readonly lower: Bound<Asking>; readonly upper: Bound<Allowing> } {
  const { held, reach, low, high, least, contents, capacity } = scaled
  let lower: Bound<Asking> = { at: least, by: { limit: 'least-total' } }
  if (contents > lower.at) lower = { at: contents, by: { limit: 'contents' } }
  let upper: Bound<Allowing> = { at: capacity, by: { limit: 'capacity' } }
  for (const [index, { id, locked }] of problem.lines.entries()) {
    const mass = held[index] ?? 0
    const needed = mass > 0 ? mass / (high[index] ?? 1) : 0
    if (needed > lower.at) lower = { at: needed, by: { limit: 'high', id } }
    const lowest = low[index] ?? 0
    const allowed = lowest > 0 ? (reach[index] ?? 0) / lowest : Number.POSITIVE_INFINITY
    if (allowed < upper.at) upper = { at: allowed, by: { limit: locked ? 'locked' : 'stock', id } }
  }
  return { lower, upper }
}

function linesConflict(
  { totalUg, capacityUg }: RemedyProblem,
  lower: Bound<Asking>,
  upper: Bound<Allowing>,
): RemedyRefusal {
  const allowedUg = upper.by.limit === 'capacity' ? capacityUg : Math.floor(upper.at * totalUg)
  // A ratio of whole micrograms that is itself one is not to be rounded up past it.
  const neededUg = Math.ceil(lower.at * totalUg - 1e-3)
  return { code: 'LINES_CONFLICT', needs: lower.by, neededUg, allows: upper.by, allowedUg }
}

function minimumsExceed({ totalUg }: RemedyProblem, scaled: Scaled, total: number): RemedyRefusal {
  const lowest = lowestAt(scaled, total)
  return {
    code: 'MINIMUMS_EXCEED_TOTAL',
    totalUg: Math.round(total * totalUg),
    minimumsUg: Math.round(sumOf(lowest) * totalUg),
    ids: scaled.ids.filter((_, index) => (scaled.held[index] ?? 0) > (scaled.target[index] ?? 0) * total + same),
  }
}

function maximumsBelow(problem: RemedyProblem, scaled: Scaled, total: number, needs: Asking): RemedyRefusal {
  const { reach, high } = scaled
  return {
    code: 'MAXIMUMS_BELOW_TOTAL',
    totalUg: Math.round(total * problem.totalUg),
    maximumsUg: Math.round(sumOf(highestAt(scaled, total)) * problem.totalUg),
    needs,
    ids: scaled.ids.filter((_, index) => (reach[index] ?? 0) < (high[index] ?? 1) * total),
    allLocked: problem.lines.every(({ locked }) => locked),
  }
}

/** The limits that hold the lines where all are at their least. */
const atLeast = ({ ids, held, low }: Scaled, total: number): Limit[] =>
  ids.flatMap((id, index): Limit[] => {
    const lowest = (low[index] ?? 0) * total
    if ((held[index] ?? 0) > lowest) return [{ limit: 'in', id }]
    return lowest > 0 ? [{ limit: 'low', id }] : []
  })

/** The limits that hold the lines where all are at their most. */
const atMost = ({ lines }: RemedyProblem, { reach, high }: Scaled, total: number): Limit[] =>
  lines.map(({ id, locked }, index): Limit => {
    if ((reach[index] ?? 0) >= (high[index] ?? 1) * total) return { limit: 'high', id }
    return { limit: locked ? 'locked' : 'stock', id }
  })

/** Totals at which a line changes from what is in (or what it can come to) to a share of the total. */
const breakpoints = (masses: readonly number[], shares: readonly number[]): number[] =>
  masses.map((mass, index) => mass / (shares[index] ?? 0)).filter(Number.isFinite)

/** Where a convex, piecewise linear gap is closed between two totals; `low` is past `high` where it never is. */
function spanOf(
  gap: (total: number) => number,
  bends: readonly number[],
  from: number,
  to: number,
): { readonly low: number; readonly high: number; readonly nearest: number } {
  const totals = [from, ...bends.filter((at) => at > from && at < to).sort((a, b) => a - b), to]
  const points = totals.map((total) => ({ total, gap: gap(total) }))
  const nearest = points.reduce((a, b) => (b.gap < a.gap ? b : a)).total
  const first = points.findIndex((point) => point.gap <= same)
  if (first < 0) return { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY, nearest }
  const last = points.findLastIndex((point) => point.gap <= same)
  return {
    low: crossing(points[first - 1], points[first], from),
    high: crossing(points[last + 1], points[last], to),
    nearest,
  }
}

interface Point {
  readonly total: number
  readonly gap: number
}

/** Where the gap closes on the way from an open point to a closed one; at the end where there is no open one. */
function crossing(open: Point | undefined, closed: Point | undefined, end: number): number {
  if (!open || !closed) return end
  if (closed.gap >= 0) return closed.total
  return open.total + ((closed.total - open.total) * open.gap) / (open.gap - closed.gap)
}
