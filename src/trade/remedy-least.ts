import type { Micrograms } from './mass'
import { bindingAt, outOfRangeAt } from './remedy-check'
import { highestAt, leastTotal, lowestAt } from './remedy-interval'
import {
  type FeasibleRemedy,
  type Limit,
  mostTotalOf,
  type RemedyProblem,
  type RemedyRefusal,
  sumOf,
  tooMuch,
} from './remedy-model'
import { type Scaled, scaledOf, wholeMicrograms } from './remedy-scaled'
import { leastCost, leastSum, leastWorst } from './remedy-share'

/**
 * The best there is of its kind. `optimum` is what was made least, before masses were rounded to whole micrograms;
 * `binds` names what would have to be loosened for a better one.
 */
export type LeastRemedy =
  | (FeasibleRemedy & { readonly optimum: number; readonly binds: readonly Limit[] })
  | { readonly feasible: false; readonly why: RemedyRefusal }

/**
 * Least extra: the smallest total (`optimum`, µg) at which every fraction lies in its range. Of all ways to that total
 * the one with the least worst departure, and of those the one with the least sum of departures, in tolerances.
 */
export function addTheLeast(problem: RemedyProblem): LeastRemedy {
  const scaled = scaledOf(problem)
  const least = leastTotal(problem, scaled)
  if (!least.feasible) return least
  const totalUg = wholeTotal(least.low, problem.totalUg)
  const total = totalUg / problem.totalUg
  const masses = nearestTo(scaled, total, { lowest: lowestAt(scaled, total), highest: highestAt(scaled, total) })
  return { ...remedyOf(problem, masses, totalUg), optimum: least.low * problem.totalUg, binds: least.lowBy }
}

/**
 * Least departure: at the planned total, or at what is in where that is more, the least worst departure of a line
 * from its fraction, in its tolerances (`optimum`). Ranges may break; at 1 or less every line is within its tolerance.
 */
export function departTheLeast(problem: RemedyProblem): LeastRemedy {
  const scaled = scaledOf(problem)
  const inUg = sumOf(problem.lines.map(({ massUg }) => massUg))
  const totalUg = Math.max(problem.totalUg, inUg)
  if (totalUg > mostTotalOf(problem).atUg) return { feasible: false, why: tooMuch(problem, totalUg) }
  const total = totalUg / problem.totalUg
  const bounds = { lowest: scaled.held, highest: scaled.reach }
  const mostUg = Math.round(sumOf(scaled.reach) * problem.totalUg)
  if (mostUg < totalUg) return { feasible: false, why: outOfReach(problem, mostUg, totalUg) }

  const optimum = leastWorst(scaled, total, bounds)
  const remedy = remedyOf(problem, leastSum(scaled, total, bounds, optimum), totalUg)
  return { ...remedy, optimum, binds: worstLines(problem, remedy, optimum) }
}

/**
 * Least cost: what is still to add costs the least (`optimum`) with every fraction in its range. A larger batch never
 * costs less: as the total grows, the lines that stand at their least or most take shares of it that sum to at most 1,
 * and no price is negative. So the total is that of the least extra, filled from the cheapest.
 */
export function spendTheLeast(problem: RemedyProblem): LeastRemedy {
  const unpriced = problem.lines.find((line) => line.costPerKg === undefined && !line.locked && line.stockUg !== 0)
  if (unpriced) return { feasible: false, why: { code: 'COST_UNKNOWN', id: unpriced.id } }
  const scaled = scaledOf(problem)
  const least = leastTotal(problem, scaled)
  if (!least.feasible) return least

  const prices = problem.lines.map(({ costPerKg = 0 }) => costPerKg * (problem.totalUg / 1e9))
  const order = scaled.ids
    .map((id, index) => ({ id, index, price: prices[index] ?? 0 }))
    .sort((a, b) => a.price - b.price || (a.id < b.id ? -1 : 1))
  const cheapest = (total: number): number[] =>
    leastCost(scaled, total, { lowest: lowestAt(scaled, total), highest: highestAt(scaled, total) }, order)
  const additions = cheapest(least.low).map((mass, index) => mass - (scaled.held[index] ?? 0))
  const optimum = sumOf(additions.map((addition, index) => (prices[index] ?? 0) * addition))

  const totalUg = wholeTotal(least.low, problem.totalUg)
  const remedy = remedyOf(problem, cheapest(totalUg / problem.totalUg), totalUg)
  const finalUg = problem.lines.map(({ massUg }, index) => massUg + (remedy.additionsUg[index] ?? 0))
  return { ...remedy, optimum, binds: bindingAt(problem, finalUg) }
}

/** The remedy that these masses make at a total of whole micrograms. */
export function remedyOf(problem: RemedyProblem, masses: readonly number[], totalUg: Micrograms): FeasibleRemedy {
  const finalUg = wholeMicrograms(problem, masses, totalUg)
  return {
    feasible: true,
    totalUg,
    additionsUg: problem.lines.map(({ massUg }, index) => (finalUg[index] ?? massUg) - massUg),
    outOfRange: outOfRangeAt(problem, finalUg, totalUg),
  }
}

/** The lines that are as far from their target as the worst, and by what they are kept there. */
export function worstLines(
  problem: RemedyProblem,
  { additionsUg, totalUg }: FeasibleRemedy,
  worst: number,
): readonly Limit[] {
  const { ids, target, tolerance } = scaledOf(problem)
  return ids.flatMap((id, index): Limit[] => {
    const addUg = additionsUg[index] ?? 0
    const line = problem.lines[index]
    const awayUg = (line?.massUg ?? 0) + addUg - (target[index] ?? 0) * totalUg
    if (worst <= 0 || Math.abs(awayUg) + 2 < worst * (tolerance[index] ?? 0) * totalUg) return []
    if (awayUg > 0) return [{ limit: addUg === 0 ? 'in' : 'tolerance', id }]
    if (line?.locked) return [{ limit: 'locked', id }]
    return [{ limit: addUg === line?.stockUg ? 'stock' : 'tolerance', id }]
  })
}

const nearestTo = (scaled: Scaled, total: number, bounds: Parameters<typeof leastWorst>[2]): number[] =>
  leastSum(scaled, total, bounds, leastWorst(scaled, total, bounds))

/** The whole micrograms at or above a total; what is a whole number but for its last digits is not rounded past itself. */
const wholeTotal = (at: number, unitUg: Micrograms): Micrograms => Math.ceil(at * unitUg - 1e-3)

function outOfReach(problem: RemedyProblem, maximumsUg: Micrograms, totalUg: Micrograms): RemedyRefusal {
  return {
    code: 'MAXIMUMS_BELOW_TOTAL',
    totalUg,
    maximumsUg,
    needs: { limit: 'least-total' },
    ids: problem.lines.filter(({ locked, stockUg }) => locked || stockUg !== null).map(({ id }) => id),
    allLocked: problem.lines.every(({ locked }) => locked),
  }
}
