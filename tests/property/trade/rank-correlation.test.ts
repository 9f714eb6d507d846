import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chanceOf, ranksOf, spearman } from '../../../src/trade/rank-correlation'
import { propertyRuns } from '../runs'

/** Few values, so that ties are common. */
const value = fc.oneof(fc.integer({ min: -5, max: 5 }), fc.double({ min: -1e6, max: 1e6, noNaN: true }))
const pairs = fc.array(fc.tuple(value, value), { minLength: 4, maxLength: 14 })
const xsOf = (given: readonly (readonly [number, number])[]) => given.map(([x]) => x)
const ysOf = (given: readonly (readonly [number, number])[]) => given.map(([, y]) => y)

test('[K20] it lies between −1 and 1, and which of the two is asked about does not matter', () => {
  fc.assert(
    fc.property(pairs, (given) => {
      const told = spearman(xsOf(given), ysOf(given))
      expect(spearman(ysOf(given), xsOf(given))).toEqual(told)
      if (told !== null) expect(Math.abs(told.rho)).toBeLessThanOrEqual(1)
    }),
    propertyRuns,
  )
})

test('[K20] neither the unit nor the order of the batches changes it; turned round it changes its sign', () => {
  fc.assert(
    fc.property(pairs, (given) => {
      const told = spearman(xsOf(given), ysOf(given))
      const rows = [...given].reverse()
      expect(spearman(xsOf(rows), ysOf(rows))?.rho ?? null).toEqual(told === null ? null : expect.closeTo(told.rho, 12))
      expect(
        spearman(
          xsOf(given).map((x) => x * 4),
          ysOf(given),
        ),
      ).toEqual(told)
      const turned = spearman(
        xsOf(given).map((x) => -x),
        ysOf(given),
      )
      if (told === null) expect(turned).toBeNull()
      else expect(turned?.rho).toBeCloseTo(-told.rho, 12)
    }),
    propertyRuns,
  )
})

test('[K20] ranks of equal values are shared, and all of them sum to n(n+1)/2', () => {
  fc.assert(
    fc.property(fc.array(value, { maxLength: 20 }), (values) => {
      const ranks = ranksOf(values)
      const n = values.length
      expect(ranks.reduce((sum, rank) => sum + rank, 0)).toBe((n * (n + 1)) / 2)
      values.forEach((each, at) => {
        values.forEach((other, index) => {
          if (each === other) expect(ranks[at]).toBe(ranks[index])
          if (each < other) expect(ranks[at]).toBeLessThan(ranks[index] ?? 0)
        })
      })
    }),
    propertyRuns,
  )
})

test('[K20] the textbook with ties; what is constant, missing or too few goes with nothing', () => {
  expect(ranksOf([7, 3, 3, 9])).toEqual([3, 1.5, 1.5, 4])
  expect(spearman([1, 2, 2, 3], [1, 2, 3, 4])?.rho).toBeCloseTo(4.5 / Math.sqrt(22.5), 12)
  expect(spearman([1, 2, 3, 4, 5], [2, 4, 8, 16, 32])).toEqual({ rho: 1, n: 5 })
  expect(spearman([5, 5, 5, 5], [1, 2, 3, 4])).toBeNull()
  expect(spearman([1, 2, 3], [1, 2, 3])).toBeNull()
  expect(spearman([1, null, 2, 3, 4], [1, 9, 2, 3, null])).toBeNull()
  expect(spearman([1, null, 2, 3, 4], [1, 9, 2, 3, 0])).toMatchObject({ n: 4 })
})

test('[K21] what chance alone reaches is counted: at most one order in twenty is as far, and the next one is not', () => {
  for (const n of [5, 6, 7, 8]) {
    const sorted = Array.from({ length: n }, (_, at) => at)
    const sizes = ordersOf(sorted).map((order) => Math.abs(spearman(sorted, order)?.rho ?? 0))
    const chance = chanceOf(n) ?? 2
    const share = (least: number) => sizes.filter((size) => size >= least - 1e-9).length / sizes.length
    expect(share(chance)).toBeLessThanOrEqual(0.05)
    const next = Math.max(...sizes.filter((size) => size < chance - 1e-9))
    expect(share(next)).toBeGreaterThan(0.05)
  }
  expect(chanceOf(4)).toBeNull()
  expect(chanceOf(13)).toBeLessThan(chanceOf(12) ?? 0)
})

function ordersOf(values: readonly number[]): number[][] {
  if (values.length < 2) return [[...values]]
  return values.flatMap((value, at) =>
    ordersOf([...values.slice(0, at), ...values.slice(at + 1)]).map((rest) => [value, ...rest]),
  )
}
