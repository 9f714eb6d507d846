import * as v from 'valibot'
import { expect } from 'vitest'
import { fitNewton } from '../../src/trade/newton'
import { studentQuantile } from '../../src/trade/quantile'
import { timeTo } from '../../src/trade/thermal'
import { expectRelative } from './close'

const givenShape = v.object({
  t_min: v.array(v.number()),
  T_C: v.array(v.number()),
  target: v.number(),
  sigma: v.number(),
  asymptote: v.union([
    v.object({ fixed: v.number() }),
    v.object({
      prior: v.object({
        mean: v.number(),
        sd: v.number(),
        lo: v.optional(v.number()),
        hi: v.optional(v.number()),
      }),
    }),
  ]),
})
const expectedShape = v.object({ remaining_min: v.number(), se_min: v.number(), lo: v.number(), hi: v.number() })

const ofTime = 1e-3
const ofError = 1e-2

export function checkThermal(given: unknown, expected: unknown): void {
  const { t_min, T_C, target, sigma, asymptote } = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const readings = t_min.map((atMin, index) => ({ atMin, temperatureC: T_C[index] ?? Number.NaN }))
  const fit = fitNewton(readings, asymptoteOf(asymptote), sigma)
  if (!fit.ok) throw new Error(fit.refusal.code)
  const time = timeTo(fit.value, target, studentQuantile)
  if (time === 'never') throw new Error('never')
  expect(T_C).toHaveLength(t_min.length)
  expectRelative(time.remainingMin, answer.remaining_min, ofTime, 'remaining_min')
  expectRelative(time.errorMin, answer.se_min, ofError, 'se_min')
  expectRelative(time.lowMin, answer.lo, ofTime, 'lo')
  expectRelative(time.highMin, answer.hi, ofTime, 'hi')
}

function asymptoteOf(given: v.InferOutput<typeof givenShape>['asymptote']) {
  if ('fixed' in given) return { kind: 'fixed' as const, temperatureC: given.fixed }
  const { mean, sd, lo, hi } = given.prior
  return {
    kind: 'prior' as const,
    meanC: mean,
    sdC: sd,
    ...(lo === undefined ? {} : { leastC: lo }),
    ...(hi === undefined ? {} : { mostC: hi }),
  }
}
