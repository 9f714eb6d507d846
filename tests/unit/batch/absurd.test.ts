import { describe, expect, test } from 'vitest'
import { absurdMeasurement, absurdTemperature, meantBy } from '../../../src/batch/absurd'
import type { Property } from '../../../src/batch/formula'
import { verdictOf } from '../../../src/batch/record-results'
import { grams } from '../../support/batch'

const odd = (property: Property, value: number) => absurdMeasurement({ property, label: 'Own', value })

describe('[G7] a reading is absurd', () => {
  test('below −40 °C and above 250 °C, wherever a temperature is read', () => {
    for (const temperatureC of [-40, 0, 250]) expect(absurdTemperature(temperatureC)).toBeNull()
    for (const temperatureC of [-40.1, 250.1, Number.NaN, Number.POSITIVE_INFINITY]) {
      const refusal = { code: 'TEMPERATURE_ABSURD', temperatureC }
      expect(absurdTemperature(temperatureC)).toEqual(refusal)
      expect(odd('temperature', temperatureC)).toEqual(refusal)
      const sample = { property: 'pH', label: 'pH', value: 5, sampleC: temperatureC } as const
      expect(absurdMeasurement(sample)).toEqual(refusal)
    }
    expect(odd('temperature', 250)).toBeNull()
    expect(absurdMeasurement({ property: 'pH', label: 'pH', value: 5, sampleC: 25 })).toBeNull()
  })

  test.each<[Property, number, number]>([
    ['pH', 0, 14],
    ['viscosity', 0, 10_000_000],
    ['density', 0.1, 5],
    ['foam', -1e9, 1e9],
  ])('outside what an instrument shows of %s', (property, least, most) => {
    expect([odd(property, least), odd(property, most)]).toEqual([null, null])
    for (const value of [least - 0.01, most * 11, Number.NaN])
      expect(odd(property, value)).toEqual({ code: 'VALUE_ABSURD', property, value })
  })

  test('and a pH without its decimal mark is told as what was meant', () => {
    expect(odd('pH', 71)).toEqual({ code: 'VALUE_ABSURD', property: 'pH', value: 71, meant: 7.1 })
    expect([14, 14.1, 140, 141].map((value) => meantBy('pH', value))).toEqual([undefined, 1.41, 14, undefined])
    expect(meantBy('viscosity', 71)).toBeUndefined()
  })

  test('where its sample weighs nothing; words have no range', () => {
    const words = { property: 'appearance', label: 'Appearance', text: 'white' } as const
    expect(absurdMeasurement(words)).toBeNull()
    expect(absurdMeasurement({ ...words, sampleUg: grams(1) })).toBeNull()
    expect(absurdMeasurement({ ...words, sampleUg: -1 })).not.toBeNull()
  })
})

describe('[E65] a result against its limits', () => {
  const both = { limits: { min: 4.9, max: 5.3 } }
  test.each<[{ value?: number; good?: boolean }, Parameters<typeof verdictOf>[1], string]>([
    [{ value: 4.89 }, both, 'under'],
    [{ value: 4.9 }, both, 'within'],
    [{ value: 5.3 }, both, 'within'],
    [{ value: 5.31 }, both, 'over'],
    [{ value: 9 }, { limits: { min: 4.9 } }, 'within'],
    [{ value: 4 }, { limits: { min: 4.9 } }, 'under'],
    [{ value: 1 }, { limits: { max: 5.3 } }, 'within'],
    [{ value: 6 }, { limits: { max: 5.3 } }, 'over'],
    [{ value: 6 }, {}, 'none'],
    [{ value: 6, good: true }, { limits: {} }, 'within'],
    [{ value: 6 }, undefined, 'none'],
    [{ good: true }, both, 'within'],
    [{ good: false }, both, 'over'],
    [{}, both, 'none'],
  ])('%j of %j is %s', (result, check, verdict) => {
    expect(verdictOf(result, check)).toBe(verdict)
  })
})
