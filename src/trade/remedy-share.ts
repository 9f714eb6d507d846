import { sumOf } from './remedy-model'
import type { Scaled } from './remedy-scaled'

/** What each line may come to at a total, in units of the planned total. */
export interface Bounds {
  readonly lowest: readonly number[]
  readonly highest: readonly number[]
}

/**
 * The least worst departure t at a total M, in tolerances: the greatest of what one line alone is kept from its target
 * by its bounds, the least t with Σ max(lowest_i, M(f_i − t·tol_i)) ≤ M, and the least with
 * Σ min(highest_i, M(f_i + t·tol_i)) ≥ M. It needs Σ lowest ≤ M ≤ Σ highest.
 */
export function leastWorst(scaled: Scaled, total: number, { lowest, highest }: Bounds): number {
  const { target, tolerance } = scaled
  const over = target.map((fraction, index) => (lowest[index] ?? 0) - fraction * total)
  const under = target.map((fraction, index) => fraction * total - (highest[index] ?? 0))
  const rate = tolerance.map((each) => each * total)
  const own = Math.max(0, ...over.map((gap, index) => Math.max(gap, under[index] ?? 0) / (rate[index] ?? 1)))
  const whole = sumOf(target) * total
  // With every line at its target or its bound, what is too much (or too little) goes as all the others give way.
  const tooMuch = whole + sumOf(over.filter((gap) => gap > 0)) - total
  const tooLittle = total - whole + sumOf(under.filter((gap) => gap > 0))
  return Math.max(own, timeToGive(tooMuch, over, rate), timeToGive(tooLittle, under, rate))
}

/**
 * Masses at a total, none further than `worst` tolerances from its target, with the least sum of departures: every line
 * at the reachable mass nearest its target, the residual to the lines of the largest tolerance first, ties by name.
 */
export function leastSum(scaled: Scaled, total: number, bounds: Bounds, worst: number): number[] {
  const { ids, target, tolerance } = scaled
  const limits = target.map((fraction, index) => {
    const room = worst * (tolerance[index] ?? 0) * total
    const lowest = Math.max(bounds.lowest[index] ?? 0, fraction * total - room)
    return { lowest, highest: Math.max(lowest, Math.min(bounds.highest[index] ?? 0, fraction * total + room)) }
  })
  const masses = limits.map(({ lowest, highest }, index) => clamp((target[index] ?? 0) * total, lowest, highest))
  const order = ids
    .map((id, index) => ({ id, index, tolerance: tolerance[index] ?? 0 }))
    .sort((a, b) => b.tolerance - a.tolerance || (a.id < b.id ? -1 : 1))
  return fillUp(masses, limits, order, total)
}

/** Masses at a total of the least cost: every line at its least, then the cheapest first up to its most. */
export function leastCost(
  scaled: Scaled,
  total: number,
  { lowest, highest }: Bounds,
  order: readonly { readonly index: number }[],
): number[] {
  const limits = scaled.ids.map((_, index) => {
    const least = lowest[index] ?? 0
    return { lowest: least, highest: Math.max(least, highest[index] ?? 0) }
  })
  return fillUp(lowest, limits, order, total)
}

/** Gives what lacks of a total (or takes what is too much) line after line, as far as each goes. */
function fillUp(
  masses: readonly number[],
  limits: readonly { readonly lowest: number; readonly highest: number }[],
  order: readonly { readonly index: number }[],
  total: number,
): number[] {
  const filled = [...masses]
  let left = total - sumOf(filled)
  for (const { index } of order) {
    const { lowest = 0, highest = 0 } = limits[index] ?? {}
    const before = filled[index] ?? 0
    const after = clamp(before + left, lowest, highest)
    filled[index] = after
    left -= after - before
  }
  return filled
}

/**
 * The least t at which lines that each give way at their own rate, until they meet their bound at −gap ÷ rate, have
 * given an amount: a walk along the times at which lines stop. Where they stop short of it by rounding, the last one.
 */
function timeToGive(amount: number, gaps: readonly number[], rates: readonly number[]): number {
  if (amount <= 0) return 0
  const free = gaps
    .map((gap, index) => ({ until: -gap / (rates[index] ?? 1), rate: rates[index] ?? 0 }))
    .filter(({ until }) => until > 0)
    .sort((a, b) => a.until - b.until)
  let rate = sumOf(free.map((line) => line.rate))
  let time = 0
  let left = amount
  for (const line of free) {
    const step = (line.until - time) * rate
    if (step >= left) return time + left / rate
    left -= step
    time = line.until
    rate -= line.rate
  }
  return time
}

const clamp = (value: number, lowest: number, highest: number): number => Math.min(Math.max(value, lowest), highest)
