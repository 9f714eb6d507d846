import * as v from 'valibot'
import { expect } from 'vitest'
import { microgramsFromGrams } from '../../src/trade/mass'
import { gramsFromMicrograms } from '../../src/trade/mass-ratio'
import { letQsAbsorb, type RemedyProblem, scaleTheRest } from '../../src/trade/remedy'
import { verifyRemedy } from '../../src/trade/remedy-check'
import { addTheLeast, departTheLeast, type LeastRemedy, spendTheLeast } from '../../src/trade/remedy-least'
import { expectAbsolute, expectRelative } from './close'

const givenShape = v.object({
  T0: v.number(),
  C: v.number(),
  minTotal: v.number(),
  qs: v.number(),
  lines: v.array(
    v.object({
      name: v.string(),
      f: v.number(),
      lo: v.number(),
      hi: v.number(),
      tol: v.number(),
      m: v.number(),
      locked: v.boolean(),
      stock: v.nullable(v.number()),
      cost: v.number(),
    }),
  ),
})
const expectedShape = v.object({
  exact: v.object({ feasible: v.boolean(), k: v.nullable(v.number()) }),
  extra: v.object({ feasible: v.boolean(), total: v.optional(v.number()) }),
  departure: v.object({ feasible: v.boolean(), total: v.optional(v.number()), worst: v.optional(v.number()) }),
  qs: v.object({ feasible: v.boolean(), qsFinal: v.number(), outOfRange: v.array(v.number()) }),
  cost: v.object({ feasible: v.boolean(), cost: v.optional(v.number()) }),
})

type Given = v.InferOutput<typeof givenShape>

const tolerance = 1e-6

export function checkRemedy(given: unknown, expected: unknown): void {
  const parsed = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const problem = problemOf(parsed)
  const mass = (gotUg: number, wanted: number | undefined, what: string): void =>
    expectAbsolute(gramsFromMicrograms(gotUg), wanted ?? Number.NaN, tolerance * parsed.T0, what)

  const exact = scaleTheRest(problem)
  expect(exact.feasible).toBe(answer.exact.feasible)
  if (exact.feasible) {
    expectAbsolute(exact.factor, answer.exact.k ?? Number.NaN, tolerance, 'k')
    expect(verifyRemedy(problem, exact.additionsUg)).toEqual([])
  }

  const extra = addTheLeast(problem)
  expect(extra.feasible).toBe(answer.extra.feasible)
  if (extra.feasible) {
    mass(extra.optimum, answer.extra.total, 'least total')
    mass(extra.totalUg, answer.extra.total, 'total')
    expect(verifyRemedy(problem, extra.additionsUg)).toEqual([])
  }

  const departure = departTheLeast(problem)
  expect(departure.feasible).toBe(answer.departure.feasible)
  if (departure.feasible) {
    mass(departure.totalUg, answer.departure.total, 'total')
    expectAbsolute(departure.optimum, answer.departure.worst ?? Number.NaN, tolerance, 'worst')
    expect(withoutRanges(problem, departure)).toEqual([])
  }

  const qs = letQsAbsorb(problem)
  expect(qs.feasible).toBe(answer.qs.feasible)
  mass(qs.qsFinalUg ?? Number.NaN, answer.qs.qsFinal, 'q.s.')
  expect(qs.outOfRange).toEqual(answer.qs.outOfRange.map((index) => parsed.lines[index]?.name))

  const cost = spendTheLeast(problem)
  expect(cost.feasible).toBe(answer.cost.feasible)
  if (cost.feasible) {
    expectRelative(cost.optimum, answer.cost.cost ?? Number.NaN, tolerance, 'cost')
    expect(verifyRemedy(problem, cost.additionsUg)).toEqual([])
  }
}

const withoutRanges = (problem: RemedyProblem, remedy: LeastRemedy & { readonly feasible: true }) =>
  verifyRemedy(problem, remedy.additionsUg).filter(({ limit }) => limit !== 'low' && limit !== 'high')

const problemOf = ({ T0, C, minTotal, qs, lines }: Given): RemedyProblem => ({
  totalUg: microgramsFromGrams(T0),
  capacityUg: microgramsFromGrams(C),
  minTotalUg: microgramsFromGrams(minTotal),
  qsIndex: qs,
  lines: lines.map(({ name, f, lo, hi, tol, m, locked, stock, cost }) => ({
    id: name,
    fraction: f,
    low: lo,
    high: hi,
    tolerance: tol,
    massUg: microgramsFromGrams(m),
    locked,
    stockUg: stock === null ? null : microgramsFromGrams(stock),
    costPerKg: cost * 1000,
  })),
})
