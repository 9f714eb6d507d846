import { describe, expect, test } from 'vitest'
import { type Dimension, dimensionOf, isQuantity, massOfVolume, readQuantity } from '../../../src/trade/units'

describe('quantities', () => {
  test.each<[string, Dimension, number]>([
    ['75', 'temperature', 75],
    ['167 °F', 'temperature', 75],
    ['-40F', 'temperature', -40],
    ['168 °F', 'temperature', 75.6],
    ['25 °C', 'temperature', 25],
    ['1,5 L', 'volume', 1_500],
    ['250 ml', 'volume', 250],
    ['3 cm³', 'volume', 3],
    ['3 cm3', 'volume', 3],
    ['8000', 'viscosity', 8_000],
    ['8 Pa·s', 'viscosity', 8_000],
    ['8000 mPa·s', 'viscosity', 8_000],
    ['8000 cP', 'viscosity', 8_000],
    ['20', 'time', 1_200_000],
    ['20 min', 'time', 1_200_000],
    ['1.5 h', 'time', 5_400_000],
    ['90 s', 'time', 90_000],
    ['2 oz', 'mass', 56_699_046],
    ['0.3', 'mass', 300_000],
  ])('[L14] "%s" as a %s is %d', async (text, dimension, value) => {
    expect(await readQuantity(text, dimension)).toEqual({ ok: true, value })
  })

  test.each<[string, Dimension, object]>([
    ['3 km', 'time', { code: 'UNIT_UNKNOWN', unit: 'km', dimension: 'time' }],
    ['3 kg', 'temperature', { code: 'UNIT_UNKNOWN', unit: 'kg', dimension: 'temperature' }],
    ['warm', 'temperature', { code: 'NUMBER_LETTERS', text: 'warm' }],
    ['', 'volume', { code: 'NUMBER_EMPTY' }],
    ['min', 'time', { code: 'NUMBER_EMPTY' }],
    ['1.2.3 h', 'time', { code: 'NUMBER_TWO_MARKS', text: '1.2.3' }],
  ])('[L14] "%s" as a %s is refused', async (text, dimension, refusal) => {
    expect(await readQuantity(text, dimension)).toEqual({ ok: false, refusal })
  })

  test('[L14] limits are held in the unit that comes out', async () => {
    expect(await readQuantity('-1 min', 'time', { negative: false })).toMatchObject({
      refusal: { code: 'NUMBER_NEGATIVE' },
    })
    expect(await readQuantity('500 °F', 'temperature', { max: 200 })).toEqual({
      ok: false,
      refusal: { code: 'NUMBER_ABSURD', value: 260 },
    })
  })

  test.each<[string, Dimension, string, number]>([
    ['1.5 h', 'time', 'min', 90],
    ['90', 'time', 'h', 1.5],
    ['30 min', 'time', 'h', 0.5],
    ['77 °F', 'temperature', '°C', 25],
    ['8 Pa·s', 'viscosity', 'cP', 8_000],
    ['0.2 L', 'volume', 'mL', 200],
  ])('[L14] "%s", a %s, in %s is %d', async (text, dimension, into, value) => {
    expect(await readQuantity(text, dimension, {}, into)).toEqual({ ok: true, value })
  })

  test.each([
    ['min', 'time'],
    ['h', 'time'],
    ['°C', 'temperature'],
    ['mL', 'volume'],
    ['mPa·s', 'viscosity'],
    ['g', 'mass'],
    ['rpm', undefined],
    ['%', undefined],
    ['', undefined],
  ])('a field in %j takes a %s', (unit, dimension) => {
    expect(dimensionOf(unit)).toBe(dimension)
  })

  test('a quantity is one number with a unit that fits', () => {
    expect(isQuantity('1,5 h', 'time')).toBe(true)
    for (const text of ['1.5', '1.5 kg', 'h', '1.2.3 h', '1+2 h']) expect(isQuantity(text, 'time')).toBe(false)
  })

  test('a volume weighs its density', () => {
    expect(massOfVolume(10, 0.92)).toBe(9_200_000)
    expect(massOfVolume(0.1, 1.005)).toBe(100_500)
  })
})
