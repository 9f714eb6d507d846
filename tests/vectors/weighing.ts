import * as v from 'valibot'
import { expect } from 'vitest'
import { microgramsFromGrams } from '../../src/trade/mass'
import { gramsFromMicrograms } from '../../src/trade/mass-ratio'
import {
  expanded,
  reliabilityOf,
  smallestReliableMass,
  uncertaintyOf,
  uncertaintyOfFraction,
  type Weighing,
} from '../../src/trade/reliability'
import { expectRelative } from './close'

const numbers = v.array(v.number())
const givenShape = v.object({
  masses: numbers,
  balance: v.object({ d: v.number(), s: v.number(), lin: v.number(), uS: v.number() }),
  cumulative: v.array(v.boolean()),
  tolRel: numbers,
})
const expectedShape = v.object({
  u_net: numbers,
  u_fraction: numbers,
  U95_fraction: numbers,
  minWeight: numbers,
  ok: v.array(v.boolean()),
})

const tolerance = 1e-9

export function checkWeighing(given: unknown, expected: unknown): void {
  const { masses, balance, cumulative, tolRel } = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const scale = {
    stepUg: microgramsFromGrams(balance.d),
    repeatabilityUg: microgramsFromGrams(balance.s),
    linearityUg: microgramsFromGrams(balance.lin),
    sensitivity: balance.uS,
    capacityUg: microgramsFromGrams(10_000),
  }
  const weighings = masses.map(
    (grams, index): Weighing => ({
      netUg: microgramsFromGrams(grams),
      balance: scale,
      mode: cumulative[index] ? 'cumulative' : 're-tare',
    }),
  )

  const near = (got: readonly number[], wanted: readonly number[], what: string): void => {
    expect(got).toHaveLength(wanted.length)
    wanted.forEach((value, index) => {
      expectRelative(got[index] ?? Number.NaN, value, tolerance, `${what}[${index}]`)
    })
  }
  const fractions = weighings.map((_, index) => uncertaintyOfFraction(weighings, index))
  const smallest = tolRel.map((tol, index) => smallestReliableMass(scale, tol, cumulative[index] ?? false))

  near(weighings.map(uncertaintyOf).map(gramsFromMicrograms), answer.u_net, 'u_net')
  near(fractions, answer.u_fraction, 'u_fraction')
  near(fractions.map(expanded), answer.U95_fraction, 'U95_fraction')
  near(
    smallest.map(({ fairBelow }) => gramsFromMicrograms(fairBelow)),
    answer.minWeight,
    'minWeight',
  )
  expect(
    smallest.map((limits, index) => reliabilityOf(weighings[index]?.netUg ?? Number.NaN, limits) === 'good'),
  ).toEqual(answer.ok)
}
