import {
  type Allowing,
  type Asking,
  type Limit,
  leastTotalOf,
  mostTotalOf,
  type RemedyProblem,
  type RemedyRefusal,
  sumOf,
} from './remedy-model'
import { type Scaled, same } from './remedy-scaled'

/** The least total at which every line can lie in its range, in units of the planned total; or why there is none. */
export type LeastTotal =
  | { readonly feasible: true; readonly low: number; readonly lowBy: readonly Limit[] }
  | { readonly feasible: false; readonly why: RemedyRefusal }

/**
 * One condition couples the lines, that they sum to the total, so the feasible totals M are one interval: m_i ÷ hi_i ≤ M
 * ≤ (m_i + s_i) ÷ lo_i for every line, max(least, contents) ≤ M ≤ capacity, and ΣL_i(M) ≤ M ≤ ΣU_i(M) with
 * L_i = max(m_i, lo_i·M), U_i = min(m_i + s_i, hi_i·M). Both gaps are convex and piecewise linear in M, and
 * L_i ÷ M and U_i ÷ M fall as it grows: minimums that fit a total fit every larger one, maximums that reach a total reach
 * every smaller one.
 */
export function leastTotal(problem: RemedyProblem, scaled: Scaled): LeastTotal {
  const refused = refusedAtTheDoor(problem)
  if (refused) return { feasible: false, why: refused }
  const { lower, upper } = boundsOfTotal(problem, scaled)
  if (lower.at > upper.at + same) return { feasible: false, why: linesConflict(problem, lower, upper) }

  const fill = (total: number): number => sumOf(lowestAt(scaled, total)) - total
  const lack = (total: number): number => total - sumOf(highestAt(scaled, total))
  const filled = closedFrom(fill, breakpoints(scaled), lower.at, Math.max(lower.at, upper.at))
  if (!filled.closed) return { feasible: false, why: minimumsExceed(problem, scaled, filled.nearest) }
  if (lack(lower.at) > closeness(lower.at))
    return { feasible: false, why: maximumsBelow(problem, scaled, lower.at, lower.by) }

  const low = filled.from
  // Exact sums never come here, for where ΣL_i > M > ΣU_i some line has L_i > U_i; only rounding can part them.
  if (lack(low) > closeness(low)) return { feasible: false, why: closureConflict(problem, scaled, low) }
  return { feasible: true, low, lowBy: low <= lower.at + same ? [lower.by] : atLeast(scaled, low) }
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
  let lower: Bound<Asking> = { at: least, by: { limit: leastTotalOf(problem).by } }
  if (contents > lower.at) lower = { at: contents, by: { limit: 'contents' } }
  let upper: Bound<Allowing> = { at: capacity, by: { limit: mostTotalOf(problem).by } }
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

function linesConflict(problem: RemedyProblem, lower: Bound<Asking>, upper: Bound<Allowing>): RemedyRefusal {
  const { totalUg } = problem
  const most = mostTotalOf(problem)
  const allowedUg = upper.by.limit === most.by ? most.atUg : Math.floor(upper.at * totalUg)
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

const closureConflict = ({ totalUg }: RemedyProblem, scaled: Scaled, total: number): RemedyRefusal => ({
  code: 'CLOSURE_CONFLICT',
  neededUg: Math.round(total * totalUg),
  allowedUg: Math.round(sumOf(highestAt(scaled, total)) * totalUg),
})

/** The limits that hold the lines where all are at their least. */
const atLeast = ({ ids, held, low }: Scaled, total: number): Limit[] =>
  ids.flatMap((id, index): Limit[] => {
    const lowest = (low[index] ?? 0) * total
    if ((held[index] ?? 0) > lowest) return [{ limit: 'in', id }]
    return lowest > 0 ? [{ limit: 'low', id }] : []
  })

/** Totals at which a line changes from what is in to its least share of the total. */
const breakpoints = ({ held, low }: Scaled): number[] =>
  held.map((mass, index) => mass / (low[index] ?? 0)).filter(Number.isFinite)

/** Sums of fractions of a large total are reckoned less closely than of a small one. */
const closeness = (total: number): number => same * Math.max(1, total)

/**
 * From where on a gap is closed that is convex and piecewise linear between its bends, and falls with the total that it
 * is part of; where it never is, the total at which it is least.
 */
function closedFrom(
  gap: (total: number) => number,
  bends: readonly number[],
  from: number,
  to: number,
): { readonly closed: true; readonly from: number } | { readonly closed: false; readonly nearest: number } {
  const totals = [from, ...bends.filter((at) => at > from && at < to).sort((a, b) => a - b), to]
  const points = totals.map((total) => ({ total, gap: gap(total) }))
  const first = points.findIndex((point) => point.gap <= closeness(point.total))
  const [open, closed] = [points[first - 1], points[first]]
  if (!closed) return { closed: false, nearest: points.reduce((a, b) => (b.gap < a.gap ? b : a)).total }
  if (!open || closed.gap >= 0) return { closed: true, from: closed.total }
  return { closed: true, from: open.total + ((closed.total - open.total) * open.gap) / (open.gap - closed.gap) }
}
