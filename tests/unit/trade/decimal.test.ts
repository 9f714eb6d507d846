import { describe, expect, test } from 'vitest'
import { floorRatio, over, ratioOf, ratioOfDecimal, roundRatio, times } from '../../../src/trade/decimal'

describe('exact decimals', () => {
  test('a number is taken as the decimal it was typed as', () => {
    expect(roundRatio(times(ratioOf(0.1), ratioOfDecimal(30n, 0)))).toBe(3)
    expect(roundRatio(times(ratioOf(1.005), ratioOfDecimal(1000n, 0)))).toBe(1005)
    expect(roundRatio(times(ratioOf(0.57 / 100), ratioOfDecimal(10_000n, 0)))).toBe(57)
    expect(roundRatio(times(ratioOf(5e-7), ratioOfDecimal(2n, -6)))).toBe(1)
  })

  test('a half goes away from zero on both sides', () => {
    expect([2.5, 3.5, -2.5, -2.4, 0].map((value) => roundRatio(ratioOf(value)))).toEqual([3, 4, -3, -2, 0])
  })

  test('division keeps the sign and the floor is whole', () => {
    expect(roundRatio(over(ratioOf(-7), ratioOf(2)))).toBe(-4)
    expect(floorRatio(ratioOf(2.999))).toBe(2)
  })

  test('what is not a number, and division by what is not positive, are our own mistakes and throw', () => {
    expect(() => ratioOf(Number.NaN)).toThrow(RangeError)
    expect(() => over(ratioOf(1), ratioOf(0))).toThrow(RangeError)
    expect(() => over(ratioOf(1), ratioOf(-1))).toThrow(RangeError)
  })
})
