import { ratioOf } from './decimal'
import { fractionOf, type Micrograms } from './mass'

/** A line as a remedy sees it: what is in, what it should be, how far it may stray, what is left to add. */
export interface RemedyLine {
  readonly id: string
  /** Of the finished batch, 0–1; 0 for what was added without being planned. */
  readonly fraction: number
  /** The acceptable range of that fraction. */
  readonly low: number
  readonly high: number
  readonly massUg: Micrograms
  /** Its step has passed: no more of it can go in. */
  readonly locked: boolean
  /** What can still be added of it; null for no limit. */
  readonly stockUg: Micrograms | null
}

export interface RemedyProblem {
  readonly totalUg: Micrograms
  readonly capacityUg: Micrograms
  /** The least the batch may come to; the planned total where it is not stated. */
  readonly minTotalUg?: Micrograms
  readonly qsIndex: number | null
  readonly lines: readonly RemedyLine[]
}

/** Why a remedy cannot be: what binds it, and where a line asks for it, which. */
export type RemedyRefusal =
  | { readonly code: 'VESSEL_TOO_SMALL'; readonly neededUg: Micrograms; readonly capacityUg: Micrograms }
  | {
      readonly code: 'STOCK_TOO_SHORT'
      readonly id: string
      readonly neededUg: Micrograms
      readonly stockUg: Micrograms
    }
  | { readonly code: 'LINE_LOCKED'; readonly id: string; readonly neededUg: Micrograms }
  | { readonly code: 'LINE_NOT_IN_FORMULA'; readonly id: string }
  | { readonly code: 'NO_QS_LINE' }
  | { readonly code: 'QS_ALREADY_PAST'; readonly id: string; readonly pastUg: Micrograms }

/** Additions stand in the order of the problem's lines; with what is in they sum to the total. */
export interface FeasibleRemedy {
  readonly feasible: true
  readonly totalUg: Micrograms
  readonly additionsUg: readonly Micrograms[]
  /** Lines whose finished fraction is out of its range. */
  readonly outOfRange: readonly string[]
}

/** The exact ratio: every line at `factor` times its plan. */
export type ScaleRemedy =
  | (FeasibleRemedy & { readonly factor: number })
  | {
      readonly feasible: false
      readonly why: RemedyRefusal
      /** The line that is furthest over its plan and so asks for the larger batch; null where the least total does. */
      readonly demandedBy: string | null
      /** Where only the least total stands in the way: the smaller batch that still has the exact ratio. */
      readonly smaller?: { readonly factor: number; readonly totalUg: Micrograms }
    }

/** The q.s. line gives way at the planned total; its final mass is told even where it cannot be reached. */
export type QsRemedy =
  | (FeasibleRemedy & { readonly qsFinalUg: Micrograms })
  | {
      readonly feasible: false
      readonly why: RemedyRefusal
      readonly qsFinalUg: Micrograms | null
      readonly outOfRange: readonly string[]
    }

/** Two ratios nearer than this are the same: they come from whole micrograms. */
const sameRatio = 1e-9

/**
 * Scale the rest: the least factor k at which no line is over its plan, k = max(m_i ÷ (f_i·T0), least total ÷ T0),
 * possible up to min(C ÷ T0, (m_i + s_i) ÷ (f_i·T0)); a locked line adds nothing and so fixes k.
 */
export function scaleTheRest(problem: RemedyProblem): ScaleRemedy {
  const { totalUg, capacityUg, minTotalUg = totalUg, lines } = problem
  const stray = lines.find(({ fraction, massUg }) => fraction === 0 && massUg > 0)
  if (stray) return { feasible: false, why: { code: 'LINE_NOT_IN_FORMULA', id: stray.id }, demandedBy: stray.id }

  const planned = lines.filter(({ fraction }) => fraction > 0)
  const ratio = ({ fraction }: RemedyLine, massUg: Micrograms): number => massUg / (fraction * totalUg)
  const demands = planned.map((line) => ({ line, ratio: ratio(line, line.massUg) }))
  const limits = planned.map((line) => ({ line, ratio: ratio(line, line.massUg + stillToHand(line)) }))
  const highest = demands.reduce((a, b) => (b.ratio > a.ratio ? b : a), { line: null as RemedyLine | null, ratio: 0 })
  const lowest = limits.reduce((a, b) => (b.ratio < a.ratio ? b : a), {
    line: null as RemedyLine | null,
    ratio: capacityUg / totalUg,
  })

  const factor = Math.max(highest.ratio, minTotalUg / totalUg)
  if (factor <= lowest.ratio * (1 + sameRatio)) return scaled(problem, factor)
  const why: RemedyRefusal = lowest.line
    ? lineBinds(lowest.line, massAtFactor(lowest.line, totalUg, factor))
    : { code: 'VESSEL_TOO_SMALL', neededUg: Math.round(factor * totalUg), capacityUg }
  const demandedBy = highest.ratio >= minTotalUg / totalUg ? (highest.line?.id ?? null) : null
  if (highest.ratio > lowest.ratio * (1 + sameRatio)) return { feasible: false, why, demandedBy }
  const smaller = { factor: lowest.ratio, totalUg: Math.round(lowest.ratio * totalUg) }
  return { feasible: false, why, demandedBy, smaller }
}

/**
 * Let q.s. absorb it: the total stays, every other line is topped up to its plan as far as it can be, and the q.s. line
 * takes what remains: x_q = T0 − Σ min(max(m_i, f_i·T0), m_i + s_i), possible where m_q ≤ x_q ≤ m_q + s_q.
 */
export function letQsAbsorb(problem: RemedyProblem): QsRemedy {
  const { totalUg, capacityUg, qsIndex, lines } = problem
  const qs = qsIndex === null ? undefined : lines[qsIndex]
  if (!qs) return { feasible: false, why: { code: 'NO_QS_LINE' }, qsFinalUg: null, outOfRange: [] }

  const toppedUp = (line: RemedyLine): Micrograms =>
    Math.min(Math.max(line.massUg, massAtFactor(line, totalUg, 1)), line.massUg + stillToHand(line))
  const othersUg = lines.reduce((sum, line) => (line === qs ? sum : sum + toppedUp(line)), 0)
  const qsFinalUg = totalUg - othersUg
  const finalUg = lines.map((line) => (line === qs ? qsFinalUg : toppedUp(line)))
  const outOfRange = linesOutOfRange(lines, finalUg, totalUg)

  const why = qsBinds(qs, qsFinalUg, totalUg, capacityUg)
  if (why) return { feasible: false, why, qsFinalUg, outOfRange }
  return { feasible: true, totalUg, additionsUg: additionsTo(lines, finalUg), outOfRange, qsFinalUg }
}

function scaled({ totalUg, lines }: RemedyProblem, factor: number): ScaleRemedy {
  const finalUg = lines.map((line) => {
    const wantedUg = massAtFactor(line, totalUg, factor)
    return Math.min(Math.max(wantedUg, line.massUg), line.massUg + stillToHand(line))
  })
  const sumUg = finalUg.reduce((sum, massUg) => sum + massUg, 0)
  const outOfRange = linesOutOfRange(lines, finalUg, sumUg)
  return { feasible: true, factor, totalUg: sumUg, additionsUg: additionsTo(lines, finalUg), outOfRange }
}

function qsBinds(
  qs: RemedyLine,
  qsFinalUg: Micrograms,
  totalUg: Micrograms,
  capacityUg: Micrograms,
): RemedyRefusal | undefined {
  if (totalUg > capacityUg) return { code: 'VESSEL_TOO_SMALL', neededUg: totalUg, capacityUg }
  if (qsFinalUg < qs.massUg) return { code: 'QS_ALREADY_PAST', id: qs.id, pastUg: qs.massUg - qsFinalUg }
  return qsFinalUg > qs.massUg + stillToHand(qs) ? lineBinds(qs, qsFinalUg) : undefined
}

const additionsTo = (lines: readonly RemedyLine[], finalUg: readonly Micrograms[]): Micrograms[] =>
  lines.map(({ massUg }, index) => (finalUg[index] ?? massUg) - massUg)

/** Rounding to the microgram moves a fraction by less than this; it puts no line out of its range. */
const roundingUg = 1

/** What a line weighs at a multiple of the planned total. */
const massAtFactor = (line: RemedyLine, totalUg: Micrograms, factor: number): Micrograms =>
  factor === 1 ? fractionOf(totalUg, ratioOf(line.fraction), 1) : Math.round(factor * line.fraction * totalUg)

/** What can still be added of a line. */
const stillToHand = ({ locked, stockUg }: RemedyLine): Micrograms =>
  locked ? 0 : (stockUg ?? Number.POSITIVE_INFINITY)

function linesOutOfRange(lines: readonly RemedyLine[], massesUg: readonly Micrograms[], totalUg: Micrograms): string[] {
  return lines
    .filter(({ low, high }, index) => {
      const massUg = massesUg[index] ?? 0
      return massUg < low * totalUg - roundingUg || massUg > high * totalUg + roundingUg
    })
    .map(({ id }) => id)
}

/** What keeps a line from reaching a mass. */
function lineBinds(line: RemedyLine, massUg: Micrograms): RemedyRefusal {
  const neededUg = massUg - line.massUg
  return line.locked || line.stockUg === null
    ? { code: 'LINE_LOCKED', id: line.id, neededUg }
    : { code: 'STOCK_TOO_SHORT', id: line.id, neededUg, stockUg: line.stockUg }
}
