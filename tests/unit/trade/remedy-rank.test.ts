import { expect, test } from 'vitest'
import { type Merits, meritsOf, rankRemedies } from '../../../src/trade/remedy-rank'
import { gram, line, problem } from './remedy-bench'

const merits = (more: Partial<Merits>): Merits => ({
  feasible: true,
  breaks: 0,
  departure: 0,
  addedUg: 0,
  cost: 1,
  ...more,
})
const rank = (offers: Readonly<Record<string, Merits>>): string[] =>
  rankRemedies(Object.entries(offers), ([, each]) => each).map(({ offer, reason }) => `${offer[0]}: ${reason}`)

test('[R21] inside all limits comes first, then least change, least material, least cost, and each says why', () => {
  expect(
    rank({
      impossible: merits({ feasible: false }),
      breaking: merits({ breaks: 1 }),
      dear: merits({ departure: 0.5, addedUg: 5, cost: 3 }),
      cheap: merits({ departure: 0.5, addedUg: 5, cost: 2 }),
      heavy: merits({ departure: 0.5, addedUg: 9 }),
      unlike: merits({ departure: 2 }),
      unpriced: merits({ departure: 0.5, addedUg: 5, cost: null }),
    }),
  ).toEqual([
    'cheap: least-cost',
    'dear: least-cost',
    'unpriced: least-material',
    'heavy: least-change',
    'unlike: inside-limits',
    'breaking: possible',
    'impossible: as-good',
  ])
})

test('[R21] a change too small to tell is none, and equals keep their order', () => {
  expect(rank({ b: merits({ departure: 0.101 }), a: merits({ departure: 0.099 }) })).toEqual([
    'b: as-good',
    'a: as-good',
  ])
})

test('[R21] merits are read off the additions: limits broken, the worst departure, what is added and what it costs', () => {
  const lines = [line('water', 0.8, 50, { costPerKg: 1 }), line('oil', 0.2, 22, { costPerKg: 10 })]
  const { departure, ...rest } = meritsOf(problem(lines), [28 * gram, 0])
  expect(rest).toEqual({ feasible: true, breaks: 1, addedUg: 28 * gram, cost: 0.028 })
  expect(departure).toBeCloseTo(2, 9)
})
