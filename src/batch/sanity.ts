import type { Micrograms } from '../trade/mass'
import type { BatchRefusal } from './refusal'

/** A mass that the ledger takes is a whole number of micrograms, and more than none unless none is allowed. */
export function badMass(massUg: Micrograms, leastUg: 0 | 1 = 1): BatchRefusal | null {
  if (!Number.isSafeInteger(massUg)) return { code: 'MASS_NOT_WHOLE' }
  return massUg < leastUg ? { code: 'MASS_NOT_POSITIVE' } : null
}
