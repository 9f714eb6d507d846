import type { RemedyLine, RemedyProblem } from '../../../src/trade/remedy'

export const gram = 1_000_000

/** A line with ±5 % of its fraction as range and tolerance; masses in grams. */
export const line = (id: string, fraction: number, massG: number, more: Partial<RemedyLine> = {}): RemedyLine => ({
  id,
  fraction,
  low: fraction * 0.95,
  high: fraction * 1.05,
  massUg: Math.round(massG * gram),
  locked: false,
  stockUg: null,
  ...more,
})

/** A batch of 100 g in a vessel of 150 g whose first line is q.s. */
export const problem = (lines: readonly RemedyLine[], more: Partial<RemedyProblem> = {}): RemedyProblem => ({
  totalUg: 100 * gram,
  capacityUg: 150 * gram,
  qsIndex: 0,
  lines,
  ...more,
})
