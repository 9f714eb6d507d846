import type { Micrograms } from './mass'

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
  /** What a departure is measured in, as a fraction of the finished batch; half the range where it is not stated. */
  readonly tolerance?: number
  readonly costPerKg?: number
}

/**
 * A limit over several lines. *share*: Σ share_i · x_i of the finished batch lies in low–high (a constituent, active
 * matter of a class, the sum of the preservatives, one material on two lines). *stock*: what all of them may still take.
 */
export type Coupling =
  | {
      readonly kind: 'share'
      readonly id: string
      readonly parts: readonly { readonly line: string; readonly share: number }[]
      readonly low: number
      readonly high: number
    }
  | { readonly kind: 'stock'; readonly id: string; readonly lines: readonly string[]; readonly stockUg: Micrograms }

export interface RemedyProblem {
  readonly totalUg: Micrograms
  readonly capacityUg: Micrograms
  /** The least the batch may come to; the planned total where it is not stated. */
  readonly minTotalUg?: Micrograms
  /** What the stirrer keeps moving: less it does not reach, more it does not turn over. */
  readonly stirsUg?: { readonly min: Micrograms; readonly max: Micrograms }
  readonly qsIndex: number | null
  readonly lines: readonly RemedyLine[]
  readonly couplings?: readonly Coupling[]
}

/**
 * A limit that binds or breaks. Of a line: its range (*low*, *high*), what is left (*stock*), its step being closed
 * (*locked*), that what is in stays in (*in*), the departure itself (*tolerance*). *shared* names a coupling; *contents*
 * is all that is in already; *stirs-least* and *stirs-most* are the least and the most that the stirrer moves.
 */
export type Limit =
  | { readonly limit: 'low' | 'high' | 'stock' | 'locked' | 'in' | 'tolerance' | 'shared'; readonly id: string }
  | { readonly limit: 'capacity' | 'least-total' | 'contents' | 'stirs-least' | 'stirs-most' }

/** What asks for a batch of at least a size, and what allows one of at most a size. */
export type Asking =
  | { readonly limit: 'high'; readonly id: string }
  | { readonly limit: 'least-total' | 'contents' | 'stirs-least' }
export type Allowing =
  | { readonly limit: 'locked' | 'stock'; readonly id: string }
  | { readonly limit: 'capacity' | 'stirs-most' }

/** Why a remedy cannot be: what binds it, and where a line asks for it, which. */
export type RemedyRefusal =
  | { readonly code: 'VESSEL_TOO_SMALL'; readonly neededUg: Micrograms; readonly capacityUg: Micrograms }
  | { readonly code: 'STIRRER_TOO_SMALL'; readonly neededUg: Micrograms; readonly mostUg: Micrograms }
  /** A vessel that some lines go into before they come to the others. */
  | {
      readonly code: 'SIDE_VESSEL_TOO_SMALL'
      readonly id: string
      readonly neededUg: Micrograms
      readonly capacityUg: Micrograms
    }
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
  | { readonly code: 'RANGE_CONTRADICTORY'; readonly id: string; readonly low: number; readonly high: number }
  /** One limit asks for a batch of at least `neededUg`, another allows at most `allowedUg`. */
  | {
      readonly code: 'LINES_CONFLICT'
      readonly needs: Asking
      readonly neededUg: Micrograms
      readonly allows: Allowing
      readonly allowedUg: Micrograms
    }
  /** At `totalUg`, where it is least bad, all lines at their least come to more; `ids` hold more than their plan. */
  | {
      readonly code: 'MINIMUMS_EXCEED_TOTAL'
      readonly totalUg: Micrograms
      readonly minimumsUg: Micrograms
      readonly ids: readonly string[]
    }
  /** `needs` asks for `totalUg`, all lines at their most come to less; `ids` are closed or run out. */
  | {
      readonly code: 'MAXIMUMS_BELOW_TOTAL'
      readonly totalUg: Micrograms
      readonly maximumsUg: Micrograms
      readonly needs: Asking
      readonly ids: readonly string[]
      readonly allLocked: boolean
    }
  /** The ranges of the lines ask for a batch of at least `neededUg`, where all at their most come to `allowedUg`. */
  | { readonly code: 'CLOSURE_CONFLICT'; readonly neededUg: Micrograms; readonly allowedUg: Micrograms }
  | { readonly code: 'COST_UNKNOWN'; readonly id: string }
  /**
   * Limits over several lines that cannot be kept together with the rest; none of them may be left out. `at` is what the
   * first would come to without it, `limit` the side that this is past.
   */
  | {
      readonly code: 'SHARED_LIMITS_CONFLICT'
      readonly ids: readonly string[]
      readonly at?: number
      readonly limit?: number
      readonly allLocked: boolean
    }
  | { readonly code: 'NOT_SOLVED' }

/** Additions stand in the order of the problem's lines; with what is in they sum to the total. */
export interface FeasibleRemedy {
  readonly feasible: true
  readonly totalUg: Micrograms
  readonly additionsUg: readonly Micrograms[]
  /** Lines whose finished fraction is out of its range, and couplings that break. */
  readonly outOfRange: readonly string[]
}

/** What can still be added of a line. */
export const stillToHand = ({ locked, stockUg }: RemedyLine): Micrograms =>
  locked ? 0 : (stockUg ?? Number.POSITIVE_INFINITY)

/** No balance tells a smaller part of a batch; it keeps a range of no width from dividing by nothing. */
const leastTolerance = 1e-6

export const toleranceOf = ({ tolerance, low, high }: RemedyLine): number =>
  Math.max(tolerance ?? (high - low) / 2, leastTolerance)

/** What additions or contents are worth; null where a line of which there is some has no price. */
export function costOf(
  lines: readonly Pick<RemedyLine, 'costPerKg'>[],
  massesUg: readonly Micrograms[],
): number | null {
  let cost = 0
  for (const [index, { costPerKg }] of lines.entries()) {
    const massUg = massesUg[index] ?? 0
    if (massUg === 0) continue
    if (costPerKg === undefined) return null
    cost += costPerKg * (massUg / 1e9)
  }
  return cost
}

export const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/** The most that a batch may come to, and what says so: what the vessel holds, or what the stirrer moves in it. */
export function mostTotalOf({ capacityUg, stirsUg }: RemedyProblem): {
  readonly atUg: Micrograms
  readonly by: 'capacity' | 'stirs-most'
} {
  return stirsUg !== undefined && stirsUg.max < capacityUg
    ? { atUg: stirsUg.max, by: 'stirs-most' }
    : { atUg: capacityUg, by: 'capacity' }
}

/** The least that a batch may come to, and what says so. */
export function leastTotalOf({ totalUg, minTotalUg = totalUg, stirsUg }: RemedyProblem): {
  readonly atUg: Micrograms
  readonly by: 'least-total' | 'stirs-least'
} {
  return stirsUg !== undefined && stirsUg.min > minTotalUg
    ? { atUg: stirsUg.min, by: 'stirs-least' }
    : { atUg: minTotalUg, by: 'least-total' }
}

/** Why a batch of a size does not fit. */
export function tooMuch(problem: RemedyProblem, neededUg: Micrograms): RemedyRefusal {
  const { atUg, by } = mostTotalOf(problem)
  return by === 'capacity'
    ? { code: 'VESSEL_TOO_SMALL', neededUg, capacityUg: atUg }
    : { code: 'STIRRER_TOO_SMALL', neededUg, mostUg: atUg }
}
