import { describe, expect, test } from 'vitest'
import {
  decimalsOf,
  formatMass,
  massFromUnit,
  microgramsFromGrams,
  roundDownToStep,
  roundToStep,
  roundUpToStep,
} from '../../../src/trade/mass'
import { gramsFromMicrograms, mulDiv } from '../../../src/trade/mass-ratio'

describe('masses in micrograms', () => {
  test('[L10] grams become micrograms exactly as typed', () => {
    expect([0.1 + 0.2, 1.0000005, -1.0000005, 250.31, 63.28999999999999].map(microgramsFromGrams)).toEqual([
      300_000, 1_000_001, -1_000_001, 250_310_000, 63_290_000,
    ])
    expect(gramsFromMicrograms(1_234_567)).toBe(1.234567)
  })

  test.each([
    [1, 'µg', 1],
    [2.5, 'mg', 2_500],
    [1, 'kg', 1_000_000_000],
    [1, 'oz', 28_349_523],
    [2, 'oz', 56_699_046],
    [16, 'oz', 453_592_370],
    [1, 'lb', 453_592_370],
  ] as const)('%d %s are %d µg', (value, unit, massUg) => {
    expect(massFromUnit(value, unit)).toBe(massUg)
  })

  test('a step rounds a half away from zero, and up and down mean towards more and less', () => {
    expect([1_499, 1_500, -1_500, -1_499, -400].map((mass) => roundToStep(mass, 1_000))).toEqual([
      1_000, 2_000, -2_000, -1_000, 0,
    ])
    expect([1_999, 2_000, -1].map((mass) => roundDownToStep(mass, 1_000))).toEqual([1_000, 2_000, -1_000])
    expect([1_001, 2_000, -1_999].map((mass) => roundUpToStep(mass, 1_000))).toEqual([2_000, 2_000, -1_000])
    expect(roundToStep(7_500, 5_000)).toBe(10_000)
  })

  test('a product beyond the exact integers of a number divides exactly', () => {
    expect(mulDiv(20_000_000_001, 20_000_000_003, 20_000_000_001)).toBe(20_000_000_003)
    expect(mulDiv(1, 1, 2)).toBe(1)
    expect(mulDiv(-1, 1, 2)).toBe(-1)
    expect(mulDiv(1, 1, 3)).toBe(0)
  })

  test.each([
    [1_000, 3],
    [500, 4],
    [2_000, 3],
    [10_000, 2],
    [100_000, 1],
    [1_000_000, 0],
    [5_000_000, 0],
    [1, 6],
  ])('a readability of %d µg shows %d decimals', (stepUg, decimals) => {
    expect(decimalsOf(stepUg)).toBe(decimals)
  })

  test.each([
    [1_234_567_890, 10_000, ',', '1234,57'],
    [5_000, 1_000, '.', '0.005'],
    [-1_500, 1_000, '.', '−0.002'],
    [-400, 1_000, '.', '0.000'],
    [32_499_999, 1_000_000, '.', '32'],
    [0, 100_000, ',', '0,0'],
  ] as const)('%d µg to a step of %d µg is shown with the mark "%s" as %s', (massUg, stepUg, mark, shown) => {
    expect(formatMass(massUg, stepUg, mark)).toBe(shown)
  })
})
