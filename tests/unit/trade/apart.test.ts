import { expect, test } from 'vitest'
import { decimalsApart } from '../../../src/trade/apart'

test('[R48] a figure never looks like a limit that it is not: two decimals, or as many as tell them apart', () => {
  expect(decimalsApart([0.035, 0.036])).toBe(2)
  expect(decimalsApart([0.002, 0.002])).toBe(2)
  expect(decimalsApart([0.00196, 0.00204])).toBe(3)
  expect(decimalsApart([0.0020002, 0.002])).toBe(5)
  expect(decimalsApart([0.00200001, 0.002])).toBe(5)
  expect(decimalsApart([])).toBe(2)
})
