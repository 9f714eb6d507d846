import { over, roundRatio } from './decimal'
import { type Micrograms, massUnits } from './mass'

/** a × b ÷ c to the nearest microgram, exact for whole micrograms of any size; c is positive. */
export const mulDiv = (aUg: Micrograms, bUg: Micrograms, cUg: Micrograms): Micrograms =>
  roundRatio(over({ n: BigInt(aUg) * BigInt(bUg), d: 1n }, { n: BigInt(cUg), d: 1n }))

export const gramsFromMicrograms = (massUg: number): number => massUg / massUnits.g
