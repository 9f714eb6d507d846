import type { Micrograms } from './mass'
import { bindingAt, outOfRangeAt } from './remedy-check'
import { feasibleTotals, highestAt, lowestAt } from './remedy-interval'
import { type FeasibleRemedy, type Limit, type RemedyProblem, type RemedyRefusal, sumOf } from './remedy-model'
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
  const totals = feasibleTotals(problem, scaled)
  if (!totals.feasible) return totals
  const totalUg = wholeTotal(totals.low, totals, problem.totalUg)
  const total = totalUg / problem.totalUg
  const masses = nearestTo(scaled, total, { lowest: lowestAt(scaled, total), highest: highestAt(scaled, total) })
  return { ...remedyOf(problem, masses, totalUg), optimum: totals.low * problem.totalUg, binds: totals.lowBy }
}

/**
 * Least departure: at the planned total, or at what is in where that is more, the least worst departure of a line
 * from its fraction, in its tolerances (`optimum`). Ranges may break; at 1 or less every line is within its tolerance.
 */
export function departTheLeast(problem: RemedyProblem): LeastRemedy {
  const scaled = scaledOf(problem)
  const inUg = sumOf(problem.lines.map(({ massUg }) => massUg))
  const totalUg = Math.max(problem.totalUg, inUg)
  if (totalUg > problem.capacityUg) {
    return {
      feasible: false,
      why: { code: 'VESSEL_TOO_SMALL', neededUg: totalUg, capacityUg: problem.capacityUg },
    }
  }
  const total = totalUg / problem.totalUg
  const bounds = { lowest: scaled.held, highest: scaled.reach }
  const mostUg = Math.round(sumOf(scaled.reach) * problem.totalUg)
  if (mostUg < totalUg) return { feasible: false, why: outOfReach(problem, mostUg, totalUg) }

  const optimum = leastWorst(scaled, total, bounds)
  const remedy = remedyOf(problem, leastSum(scaled, total, bounds, optimum), totalUg)
  return { ...remedy, optimum, binds: worstLines(problem, remedy, optimum) }
}

/** Least cost: what is still to add costs the least (`optimum`) with every fraction in its range. */
export function spendTheLeast(problem: RemedyProblem): LeastRemedy {
  const unpriced = problem.lines.find((line) => line.costPerKg === undefined && !line.locked && line.stockUg !== 0)
  if (unpriced) return { feasible: false, why: { code: 'COST_UNKNOWN', id: unpriced.id } }
  const scaled = scaledOf(problem)
  const totals = feasibleTotals(problem, scaled)
  if (!totals.feasible) return totals

  const prices = problem.lines.map(({ costPerKg = 0 }) => costPerKg * (problem.totalUg / 1e9))
  const order = scaled.ids
    .map((id, index) => ({ id, index, price: prices[index] ?? 0 }))
    .sort((a, b) => a.price - b.price || (a.id < b.id ? -1 : 1))
  const cheapest = (total: number): number[] =>
    leastCost(scaled, total, { lowest: lowestAt(scaled, total), highest: highestAt(scaled, total) }, order)
  const costAt = (total: number): number =>
    sumOf(cheapest(total).map((mass, index) => (prices[index] ?? 0) * (mass - (scaled.held[index] ?? 0))))

  const best = lowestOf(costAt, totals.low, totals.high)
  const totalUg = wholeTotal(best, totals, problem.totalUg)
  const remedy = remedyOf(problem, cheapest(totalUg / problem.totalUg), totalUg)
  const finalUg = problem.lines.map(({ massUg }, index) => massUg + (remedy.additionsUg[index] ?? 0))
  return { ...remedy, optimum: costAt(best), binds: bindingAt(problem, finalUg) }
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

/** The whole micrograms at or above a total that lie in the interval; the nearest where it holds none. */
function wholeTotal(at: number, { high }: { readonly high: number }, unitUg: Micrograms): Micrograms {
  // What is a whole number but for the last digits of floating point is not to be rounded up past itself.
  const aboveUg = Math.ceil(at * unitUg - 1e-3)
  return aboveUg <= high * unitUg + 1e-3 ? aboveUg : Math.round(at * unitUg)
}

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

/** Of a golden section, the part that is kept. */
const golden = (Math.sqrt(5) - 1) / 2

/** Where a convex function is least on an interval: golden section, and both ends, the lower end at a tie. */
function lowestOf(cost: (at: number) => number, low: number, high: number): number {
  let [from, to] = [low, high]
  let [left, right] = [to - golden * (to - from), from + golden * (to - from)]
  let [atLeft, atRight] = [cost(left), cost(right)]
  while (to - from > 1e-13 * to) {
    if (atLeft <= atRight) {
      ;[to, right, atRight] = [right, left, atLeft]
      left = to - golden * (to - from)
      atLeft = cost(left)
    } else {
      ;[from, left, atLeft] = [left, right, atRight]
      right = from + golden * (to - from)
      atRight = cost(right)
    }
    if (left >= right) break
  }
  const inner = (from + to) / 2
  return [low, inner, high].reduce((a, b) => (cost(b) < cost(a) ? b : a))
}
