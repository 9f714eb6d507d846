import { expect, test } from 'vitest'
import { numberTicks, rangeRound, timeTicks } from '../../../src/parts/plot-ticks'

test('[A4] marks of a number axis are round, inside the range and no more than asked for', () => {
  expect(numberTicks(36.2, 74.1, 4)).toEqual([40, 50, 60, 70])
  expect(numberTicks(0, 1, 4)).toEqual([0, 0.5, 1])
  expect(numberTicks(0, 0.9, 9)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9])
  expect(numberTicks(-12, 12, 5)).toEqual([-10, -5, 0, 5, 10])
})

test('[A4] marks of a time axis stand on whole minutes and hours', () => {
  const minute = 60_000
  expect(timeTicks(0.5 * minute, 41 * minute, 5).map((at) => at / minute)).toEqual([10, 20, 30, 40])
  expect(timeTicks(0, 3 * minute, 6).map((at) => at / minute)).toEqual([0, 1, 2, 3])
  expect(timeTicks(0, 7 * 60 * minute, 5).map((at) => at / minute)).toEqual([0, 120, 240, 360])
})

test('[A4] one value, equal values and none still give a range with width', () => {
  for (const values of [[5], [0, 0], []]) {
    const [min, max] = rangeRound(values)
    expect(max).toBeGreaterThan(min)
  }
  expect(numberTicks(3, 3, 5)).toEqual([])
  expect(timeTicks(3, 3, 5)).toEqual([])
})
