import type { Micrograms } from '../trade/mass'
import type { Bodies } from './kinds'
import type { BatchRefusal } from './refusal'

/** A mass that the ledger takes is a whole number of micrograms, and more than none unless none is allowed. */
export function badMass(massUg: Micrograms, leastUg: 0 | 1 = 1): BatchRefusal | null {
  if (!Number.isSafeInteger(massUg)) return { code: 'MASS_NOT_WHOLE' }
  return massUg < leastUg ? { code: 'MASS_NOT_POSITIVE' } : null
}

/** Colder than a freezer or hotter than any bath of this trade: a slip of the finger. */
export const absurdTemperature = (temperatureC: number): BatchRefusal | null =>
  Number.isFinite(temperatureC) && temperatureC >= -40 && temperatureC <= 250
    ? null
    : { code: 'TEMPERATURE_ABSURD', temperatureC }

/** Refuses what no instrument reads; a pH of 71 asks whether 7.1 was meant. */
export function absurdMeasurement({ property, value, sampleC, sampleUg }: Bodies['measured']): BatchRefusal | null {
  const bad = sampleUg === undefined ? null : badMass(sampleUg)
  if (bad) return bad
  if (sampleC !== undefined) {
    const absurd = absurdTemperature(sampleC)
    if (absurd) return absurd
  }
  if (value === undefined) return null
  if (property === 'temperature') return absurdTemperature(value)
  const [least, most] = rangeOf(property)
  if (Number.isFinite(value) && value >= least && value <= most) return null
  const meant = property === 'pH' && value > 14 && value <= 140 ? { meant: value / 10 } : {}
  return { code: 'VALUE_ABSURD', property, value, ...meant }
}

/** pH; viscosity in mPa·s; density in g/mL. */
function rangeOf(property: Bodies['measured']['property']): readonly [number, number] {
  switch (property) {
    case 'pH':
      return [0, 14]
    case 'viscosity':
      return [0, 10_000_000]
    case 'density':
      return [0.1, 5]
    default:
      return [-1e9, 1e9]
  }
}
