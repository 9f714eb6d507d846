import * as v from 'valibot'
import { expect } from 'vitest'
import { studentQuantile } from '../../src/trade/quantile'
import { horizonMonths, predictionAt, shelfLifeOf, trendOf } from '../../src/trade/stability'
import { expectRelative } from './close'

const givenShape = v.object({
  t_months: v.array(v.number()),
  y: v.array(v.number()),
  lower: v.nullish(v.number()),
  upper: v.nullish(v.number()),
})
const months = v.nullable(v.number())
const expectedShape = v.object({
  slope: v.number(),
  intercept: v.number(),
  s: v.number(),
  slopeSE: v.number(),
  pred95: v.array(v.object({ t: v.number(), fit: v.number(), lo: v.number(), hi: v.number() })),
  crossLower: months,
  crossUpper: months,
  supported: months,
  reportable: months,
  tmax: v.number(),
})

const tolerance = 1e-6

export function checkStability(given: unknown, expected: unknown): void {
  const { t_months, y, lower, upper } = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const trend = trendOf(t_months.map((atMonths, index) => ({ atMonths, value: y[index] ?? Number.NaN })))
  if (!trend.ok) throw new Error(trend.refusal.code)
  const near = (got: number | null, wanted: number | null, what: string): void => {
    if (wanted === null || got === null) expect(got, what).toBe(wanted)
    else expectRelative(got, wanted, tolerance, what)
  }
  expect(answer.tmax).toBe(horizonMonths)
  near(trend.value.slope, answer.slope, 'slope')
  near(trend.value.intercept, answer.intercept, 'intercept')
  near(trend.value.s, answer.s, 's')
  near(trend.value.slopeError, answer.slopeSE, 'slopeSE')
  for (const { t, fit, lo, hi } of answer.pred95) {
    const bound = predictionAt(trend.value, t, studentQuantile)
    near(bound.fit, fit, `fit at ${t}`)
    near(bound.low, lo, `lo at ${t}`)
    near(bound.high, hi, `hi at ${t}`)
  }
  const shelf = shelfLifeOf(trend.value, { lower: lower ?? undefined, upper: upper ?? undefined }, studentQuantile)
  near(shelf.crossLower, answer.crossLower, 'crossLower')
  near(shelf.crossUpper, answer.crossUpper, 'crossUpper')
  near(shelf.supported, answer.supported, 'supported')
  near(shelf.reportable, answer.reportable, 'reportable')
}
