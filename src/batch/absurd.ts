import type { Bodies } from './kinds'
import type { BatchRefusal } from './refusal'
import { badMass } from './sanity'

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
  const meant = meantBy(property, value)
  return { code: 'VALUE_ABSURD', property, value, ...(meant === undefined ? {} : { meant }) }
}

/** What was plainly meant by a value that cannot be: a pH of 71 is 7.1 without its decimal mark. */
export const meantBy = (property: Bodies['measured']['property'], value: number): number | undefined =>
  property === 'pH' && value > 14 && value <= 140 ? Number((value / 10).toPrecision(12)) : undefined

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
