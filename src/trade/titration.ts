import { type Adjuster, chargePerMole } from './adjusters'
import { waterCharge } from './charge'

/** Adjuster in the batch, in grams, and the pH that was read with it in. */
export interface DoseRecord {
  readonly grams: number
  readonly ph: number
}

/** A batch, its adjuster, the window's edges in the order in which the pH meets them, and what was read, first to last. */
export interface Titration {
  readonly batchKg: number
  readonly adjuster: Adjuster
  readonly near: number
  readonly far: number
  readonly records: readonly [DoseRecord, ...DoseRecord[]]
}

/** Standard deviation that a reading is trusted to; the difference of two has √2 of it. */
const meterPh = 0.04
export const slackPh = Math.SQRT2 * meterPh

const leastCharge = 1e-6

/** Which way an adjuster takes the pH. */
export const directionOf = ({ adjuster }: Titration): -1 | 1 => (adjuster.kind === 'acid' ? -1 : 1)

export const lastOf = ({ records }: Titration): DoseRecord => records.at(-1) ?? records[0]

/**
 * Charge of the batch itself at a record, in mol: all charges cancel, so it is what adjuster and water leave over. Only
 * differences of it say anything.
 */
export function ownCharge({ adjuster, batchKg }: Titration, { grams, ph }: DoseRecord): number {
  return -(molPerGram(adjuster) * grams * chargePerMole(adjuster, ph) + waterCharge(batchKg, ph))
}

/** Grams of adjuster in all for the batch to sit at a pH with that charge of its own; infinite where it cannot. */
export function gramsToSit(titration: Titration, ph: number, charge: number): number {
  const { adjuster, batchKg } = titration
  const perMole = chargePerMole(adjuster, ph)
  if (perMole * directionOf(titration) <= leastCharge) return Number.POSITIVE_INFINITY
  return -(charge + waterCharge(batchKg, ph)) / (molPerGram(adjuster) * perMole)
}

const molPerGram = ({ strength, molarMass }: Adjuster): number => strength / molarMass
