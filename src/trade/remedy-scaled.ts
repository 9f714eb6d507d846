import type { Micrograms } from './mass'
import { leastTotalOf, mostTotalOf, type RemedyProblem, stillToHand, sumOf, toleranceOf } from './remedy-model'

/** A remedy problem in units of its planned total, so that the same closeness fits a jar and a drum. */
export interface Scaled {
  readonly ids: readonly string[]
  readonly target: readonly number[]
  readonly low: readonly number[]
  readonly high: readonly number[]
  readonly tolerance: readonly number[]
  /** What is in, and what a line can come to. */
  readonly held: readonly number[]
  readonly reach: readonly number[]
  readonly contents: number
  readonly least: number
  readonly capacity: number
}

/** Two masses nearer than this, in units of the planned total, are the same: a microgram in a kilogram. */
export const same = 1e-9

/** A batch of more than so many times its plan is no remedy; it keeps a vessel without a stated capacity finite. */
const mostTimes = 1e6

export function scaledOf(problem: RemedyProblem): Scaled {
  const { totalUg, lines } = problem
  return {
    ids: lines.map(({ id }) => id),
    target: lines.map(({ fraction }) => fraction),
    low: lines.map(({ low }) => low),
    high: lines.map(({ high }) => high),
    tolerance: lines.map(toleranceOf),
    held: lines.map(({ massUg }) => massUg / totalUg),
    reach: lines.map((line) => (line.massUg + stillToHand(line)) / totalUg),
    contents: sumOf(lines.map(({ massUg }) => massUg)) / totalUg,
    least: leastTotalOf(problem).atUg / totalUg,
    capacity: Math.min(mostTotalOf(problem).atUg / totalUg, mostTimes),
  }
}

/**
 * Masses in whole micrograms that sum to a total, each within one of what it was and none below what is in or above
 * what it can come to: rounded down, the rest by largest remainder, ties by name.
 */
export function wholeMicrograms(
  problem: RemedyProblem,
  masses: readonly number[],
  totalUg: Micrograms,
): readonly Micrograms[] {
  const parts = problem.lines.map((line, index) => {
    const exactUg = (masses[index] ?? 0) * problem.totalUg
    const reachUg = line.massUg + stillToHand(line)
    const wholeUg = Math.min(Math.max(Math.floor(exactUg), line.massUg), reachUg)
    return { line, reachUg, wholeUg, remainder: exactUg - wholeUg }
  })
  let leftUg = totalUg - sumOf(parts.map(({ wholeUg }) => wholeUg))
  const byRemainder = [...parts].sort((a, b) => b.remainder - a.remainder || (a.line.id < b.line.id ? -1 : 1))
  const order = leftUg < 0 ? byRemainder.reverse() : byRemainder
  for (const mostUg of [1, Number.POSITIVE_INFINITY]) {
    for (const part of order) {
      const moveUg = Math.max(
        Math.min(leftUg, mostUg, part.reachUg - part.wholeUg),
        -mostUg,
        part.line.massUg - part.wholeUg,
      )
      part.wholeUg += moveUg
      leftUg -= moveUg
    }
  }
  return parts.map(({ wholeUg }) => wholeUg)
}
