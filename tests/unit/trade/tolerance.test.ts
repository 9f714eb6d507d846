import { describe, expect, test } from 'vitest'
import { relativeTolerance } from '../../../src/trade/relative-tolerance'
import { bandOf, judge } from '../../../src/trade/tolerance'

describe('the band of a line', () => {
  test.each([
    ['±1 % where nothing is stated', 2_000_000, undefined, 10_000, 1_980_000, 2_020_000],
    ['a relative tolerance, rounded inward', 1_234_000, { relative: 0.02 }, 10_000, 1_210_000, 1_250_000],
    ['an absolute tolerance', 50_000_000, { absoluteUg: 250_000 }, 100_000, 49_800_000, 50_200_000],
    ['one step each side at the least', 500_000, { relative: 0.001 }, 10_000, 490_000, 510_000],
    ['one step round the rounded target', 504_000, { relative: 0.001 }, 10_000, 490_000, 510_000],
    ['an empty pan never meets a target', 10_000, undefined, 10_000, 10_000, 20_000],
    ['a target of nothing', 0, undefined, 10_000, 0, 10_000],
  ] as const)('[W51] %s', (_, targetUg, tolerance, stepUg, lowUg, highUg) => {
    expect(bandOf(targetUg, tolerance, stepUg)).toEqual({ lowUg, highUg })
  })

  test('[W52] a net mass is judged rounded to the readability', () => {
    const band = { lowUg: 1_980_000, highUg: 2_020_000 }
    expect([1_974_999, 1_975_000, 2_000_000, 2_024_999, 2_025_000].map((netUg) => judge(netUg, band, 10_000))).toEqual([
      'under',
      'within',
      'within',
      'within',
      'over',
    ])
  })

  test('an absolute tolerance is told relative to its target', () => {
    expect(relativeTolerance(2_000_000, { absoluteUg: 50_000 })).toBe(0.025)
    expect(relativeTolerance(2_000_000, { relative: 0.03 })).toBe(0.03)
    expect(relativeTolerance(2_000_000, undefined)).toBe(0.01)
  })
})
