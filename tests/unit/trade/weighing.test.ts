import { describe, expect, test } from 'vitest'
import {
  expanded,
  reliabilityOf,
  smallestReliableMass,
  uncertaintyOf,
  uncertaintyOfFraction,
  type Weighing,
} from '../../../src/trade/reliability'
import { type Balance, netOf } from '../../../src/trade/weighing'

const balance: Balance = { stepUg: 10_000, repeatabilityUg: 10_000, capacityUg: 2_200_000_000 }

describe('net masses', () => {
  test.each([
    [{ mode: 're-tare', readingUg: 1_830_000 }, 1_830_000],
    [{ mode: 'cumulative', readingUg: 251_830_000, previousUg: 250_000_000 }, 1_830_000],
    [{ mode: 'by-difference', beforeUg: 250_310_000, afterUg: 187_020_000 }, 63_290_000],
  ] as const)('[W53] $mode', (reading, netUg) => {
    expect(netOf(reading)).toEqual({ ok: true, value: netUg })
  })

  test('[W53] a net mass of nothing or less is refused with what it came to', () => {
    expect(netOf({ mode: 'by-difference', beforeUg: 10, afterUg: 12 })).toEqual({
      ok: false,
      refusal: { code: 'NET_NOT_POSITIVE', netUg: -2 },
    })
    expect(netOf({ mode: 're-tare', readingUg: 0 }).ok).toBe(false)
  })
})

describe('uncertainty', () => {
  const weighing = (netUg: number, mode: Weighing['mode'] = 're-tare', on = balance): Weighing => ({
    netUg,
    mode,
    balance: on,
  })

  test('comparing two loads counts repeatability twice', () => {
    const exact: Balance = { stepUg: 1, repeatabilityUg: 1_000, capacityUg: 1e9 }
    const tared = uncertaintyOf(weighing(5_000_000, 're-tare', exact))
    expect(uncertaintyOf(weighing(5_000_000, 'cumulative', exact)) / tared).toBeCloseTo(Math.SQRT2, 6)
    expect(uncertaintyOf(weighing(5_000_000, 'by-difference', exact)) / tared).toBeCloseTo(Math.SQRT2, 6)
  })

  test('repeatability counts for 0.41 of the readability at the least', () => {
    const steady: Balance = { ...balance, repeatabilityUg: 0 }
    expect(uncertaintyOf(weighing(1, 're-tare', steady))).toBeCloseTo(10_000 * Math.sqrt(0.41 ** 2 + 1 / 6), 6)
  })

  test('non-linearity and sensitivity add to it', () => {
    const worn: Balance = { ...balance, linearityUg: 30_000, sensitivity: 0.0001 }
    const expected = Math.sqrt(10_000 ** 2 + 10_000 ** 2 / 6 + 30_000 ** 2 / 3 + 50_000 ** 2)
    expect(uncertaintyOf(weighing(500_000_000, 're-tare', worn))).toBeCloseTo(expected, 6)
  })

  test('a sensitivity error common to all lines leaves their fractions alone', () => {
    const lines = [weighing(400_000_000), weighing(100_000_000)]
    const sensitive = lines.map((line) => ({ ...line, balance: { ...balance, sensitivity: 0.01 } }))
    expect(uncertaintyOfFraction(sensitive, 1)).toBe(uncertaintyOfFraction(lines, 1))
    expect(expanded(0.5)).toBe(1)
  })

  test('with one line the fraction is certain', () => {
    expect(uncertaintyOfFraction([weighing(1_000_000)], 0)).toBe(0)
    expect(() => uncertaintyOfFraction([], 0)).toThrow(RangeError)
  })
})

describe('the smallest reliable mass', () => {
  test('[W54] below 2·s·q ÷ tolerance a line is blocked, up to three times that it is fair', () => {
    const limits = smallestReliableMass(balance, 0.01, false)
    expect(limits.blocksBelow).toBeCloseTo(2_000_000, 6)
    expect(limits.fairBelow).toBeCloseTo(6_000_000, 6)
    expect([1_999_999, 2_000_001, 5_999_999, 6_000_001].map((massUg) => reliabilityOf(massUg, limits))).toEqual([
      'blocked',
      'fair',
      'fair',
      'good',
    ])
  })

  test('[W54] without re-taring it is √2 larger', () => {
    expect(smallestReliableMass(balance, 0.01, true).blocksBelow).toBeCloseTo(2_000_000 * Math.SQRT2, 3)
  })
})
