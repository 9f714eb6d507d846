import fc from 'fast-check'
import { expect, test } from 'vitest'
import { replicatesOf } from '../../../src/trade/replicates'
import { propertyRuns } from '../runs'

/** As instruments show figures: a few decimals. */
const reading = fc.integer({ min: 1, max: 10_000_000 }).map((whole) => whole / 1000)
const readings = fc.array(reading, { minLength: 1, maxLength: 12 })

test('[K3] mean and spread do not hang on the order of the readings', () => {
  fc.assert(
    fc.property(readings, fc.integer(), (given, seed) => {
      const turned = [...given].sort((a, b) => ((a * seed) % 7) - ((b * seed) % 7)).reverse()
      expect(replicatesOf(turned)).toEqual(replicatesOf(given))
    }),
    propertyRuns,
  )
})

test('[K3] another unit changes both alike, and a shift only the mean', () => {
  fc.assert(
    fc.property(readings, reading, (given, factor) => {
      const plain = replicatesOf(given)
      const scaled = replicatesOf(given.map((each) => each * factor))
      const moved = replicatesOf(given.map((each) => each + factor))
      const size = Math.max(...given) * factor + factor
      expect(Math.abs((scaled?.mean ?? 0) - (plain?.mean ?? 0) * factor)).toBeLessThan(size * 1e-9)
      expect(Math.abs((scaled?.spread?.value ?? 0) - (plain?.spread?.value ?? 0) * factor)).toBeLessThan(size * 1e-9)
      expect(Math.abs((moved?.mean ?? 0) - (plain?.mean ?? 0) - factor)).toBeLessThan(size * 1e-6)
      expect(Math.abs((moved?.spread?.value ?? 0) - (plain?.spread?.value ?? 0))).toBeLessThan(size * 1e-6)
    }),
    propertyRuns,
  )
})

test('[K3] the mean lies between the readings, and equal ones have themselves as mean and no spread', () => {
  fc.assert(
    fc.property(readings, fc.integer({ min: 2, max: 9 }), (given, times) => {
      const told = replicatesOf(given)
      expect(told?.mean).toBeGreaterThanOrEqual(Math.min(...given) * (1 - 1e-11))
      expect(told?.mean).toBeLessThanOrEqual(Math.max(...given) * (1 + 1e-11))
      const [one = 1] = given
      const same = replicatesOf(Array.from({ length: times }, () => one))
      expect(same).toMatchObject({ n: times, mean: one, spread: { value: 0 } })
    }),
    propertyRuns,
  )
})

test('[K3] the textbook: 2 4 4 4 5 5 7 9 has mean 5 and s √(32/7); two have their range; one has no spread', () => {
  expect(replicatesOf([2, 4, 4, 4, 5, 5, 7, 9])?.mean).toBe(5)
  expect(replicatesOf([2, 4, 4, 4, 5, 5, 7, 9])?.spread).toEqual({
    kind: 's',
    value: Number(Math.sqrt(32 / 7).toPrecision(12)),
  })
  expect(replicatesOf([11_300, 11_500])).toEqual({ n: 2, mean: 11_400, spread: { kind: 'range', value: 200 } })
  expect(replicatesOf([5.1])).toEqual({ n: 1, mean: 5.1, spread: null })
  expect(replicatesOf([])).toBeNull()
  expect(replicatesOf([1, Number.NaN])).toBeNull()
})
