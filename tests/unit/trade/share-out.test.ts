import { expect, test } from 'vitest'
import { shareOut } from '../../../src/trade/share-out'

test('[L4] what is left goes to the largest remainders, ties by order', () => {
  expect(shareOut(10, [1, 1, 1])).toEqual([4, 3, 3])
  expect(shareOut(5, [2, 3, 5])).toEqual([1, 2, 2])
  expect(shareOut(1, [10, 10])).toEqual([1, 0])
  expect(shareOut(7, [0, 7, 0])).toEqual([0, 7, 0])
})

test('all of it and none of it are the weights and nothing', () => {
  expect(shareOut(6, [1, 2, 3])).toEqual([1, 2, 3])
  expect(shareOut(0, [1, 2])).toEqual([0, 0])
  expect(shareOut(0, [])).toEqual([])
})

test('kilograms in micrograms are shared out exactly', () => {
  const shares = shareOut(19_999_999_999, [12_345_678_901, 7_654_321_099, 3])
  expect(shares.reduce((sum, share) => sum + share, 0)).toBe(19_999_999_999)
  expect(shares).toEqual([12_345_678_899, 7_654_321_097, 3])
})

test('an amount cannot be shared out among nothing', () => {
  expect(() => shareOut(1, [0, 0])).toThrow(RangeError)
})
