import type { Micrograms } from './mass'
import { verifyRemedy } from './remedy-check'
import { costOf, type RemedyProblem, sumOf, toleranceOf } from './remedy-model'

/** What a remedy is ranked by. */
export interface Merits {
  readonly feasible: boolean
  /** How many limits it breaks. */
  readonly breaks: number
  /** The worst departure of a line from the formula, in its tolerances. */
  readonly departure: number
  readonly addedUg: Micrograms
  /** Of what is added; null where a price is missing. */
  readonly cost: number | null
}

/** In what a remedy is better than the next one; *as-good* for one that is better in nothing, and for the last. */
export type RankReason = 'possible' | 'inside-limits' | 'least-change' | 'least-material' | 'least-cost' | 'as-good'

export interface Ranked<T> {
  readonly offer: T
  readonly reason: RankReason
}

/**
 * Remedies as a chemist would prefer them: possible ones; inside all limits, else the fewest broken; the least change
 * to the formula (to a hundredth of a tolerance); the least material; the least cost. Ties keep their order.
 */
export function rankRemedies<T>(offers: readonly T[], meritsOf: (offer: T) => Merits): readonly Ranked<T>[] {
  const judged = offers.map((offer) => ({ offer, marks: marksOf(meritsOf(offer)) }))
  judged.sort((a, b) => firstDifference(a.marks, b.marks)?.by ?? 0)
  return judged.map(({ offer, marks }, index) => {
    const next = judged[index + 1]
    return { offer, reason: (next && firstDifference(marks, next.marks)?.reason) ?? 'as-good' }
  })
}

/** The merits of additions to a batch. */
export function meritsOf(problem: RemedyProblem, additionsUg: readonly Micrograms[]): Merits {
  const { lines } = problem
  const totalUg = sumOf(lines.map(({ massUg }, index) => massUg + (additionsUg[index] ?? 0)))
  const departures = lines.map((line, index) => {
    const share = (line.massUg + (additionsUg[index] ?? 0)) / totalUg
    return Math.abs(share - line.fraction) / toleranceOf(line)
  })
  return {
    feasible: true,
    breaks: verifyRemedy(problem, additionsUg).length,
    departure: Math.max(0, ...departures),
    addedUg: sumOf(additionsUg),
    cost: costOf(lines, additionsUg),
  }
}

const order = ['possible', 'inside-limits', 'least-change', 'least-material', 'least-cost'] as const

/** In the order of `order`, the lower the better. */
const marksOf = ({ feasible, breaks, departure, addedUg, cost }: Merits): readonly number[] => [
  feasible ? 0 : 1,
  breaks,
  Math.round(departure * 100),
  addedUg,
  cost ?? Number.MAX_VALUE,
]

function firstDifference(
  a: readonly number[],
  b: readonly number[],
): { readonly reason: RankReason; readonly by: number } | undefined {
  for (const [index, reason] of order.entries()) {
    const by = (a[index] ?? 0) - (b[index] ?? 0)
    if (by !== 0) return { reason, by }
  }
  return undefined
}
