import type { Tolerance } from './amount'
import { floorRatio, type Ratio, ratioOf, times } from './decimal'
import { type Micrograms, roundDownToStep, roundToStep, roundUpToStep } from './mass'

/** The masses that count as on target, both ends included, on the balance's steps. */
export interface Band {
  readonly lowUg: Micrograms
  readonly highUg: Micrograms
}

export type Judgement = 'under' | 'within' | 'over'

/** Where a formula states nothing: ±1 % of the target. */
export const usualTolerance: Tolerance = { relative: 0.01 }

/**
 * The band round a target: the stated tolerance rounded inward to the balance's readability, but never narrower than
 * one step each side of the rounded target. A target of one step or more is never met by an empty pan.
 */
export function bandOf(targetUg: Micrograms, tolerance: Tolerance | undefined, stepUg: Micrograms): Band {
  const halfUg = halfWidth(targetUg, tolerance ?? usualTolerance)
  const roundedUg = roundToStep(targetUg, stepUg)
  const lowUg = Math.min(roundUpToStep(targetUg - halfUg, stepUg), roundedUg - stepUg)
  const highUg = Math.max(roundDownToStep(targetUg + halfUg, stepUg), roundedUg + stepUg)
  return { lowUg: Math.max(lowUg, Math.min(roundedUg, stepUg)), highUg }
}

/** Judged on the net mass rounded to the balance's readability. */
export function judge(netUg: Micrograms, band: Band, stepUg: Micrograms): Judgement {
  const roundedUg = roundToStep(netUg, stepUg)
  if (roundedUg < band.lowUg) return 'under'
  return roundedUg > band.highUg ? 'over' : 'within'
}

/** Whole micrograms at or below the stated half-width: rounding it down rounds both ends inward. */
function halfWidth(targetUg: Micrograms, tolerance: Tolerance): Micrograms {
  if ('absoluteUg' in tolerance) return Math.floor(tolerance.absoluteUg)
  return floorRatio(times({ n: BigInt(targetUg), d: 1n }, exactly(tolerance.relative)))
}

/** The few tolerances that formulas state, worked out once each: a ladder asks for the band of every line again and again. */
const worked = new Map<number, Ratio>()

function exactly(relative: number): Ratio {
  const known = worked.get(relative)
  if (known !== undefined) return known
  const ratio = ratioOf(relative)
  worked.set(relative, ratio)
  return ratio
}
