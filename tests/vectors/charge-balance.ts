import * as v from 'valibot'
import { gramsTo, phOf } from '../bench/ph/mixture'
import { expectAbsolute, expectRelative } from './close'

const species = v.union([
  v.object({ dist: v.array(v.number()) }),
  v.object({ z0: v.number(), pKas: v.array(v.number()) }),
])
const givenShape = v.object({
  mass: v.number(),
  waterFraction: v.number(),
  sidMol: v.number(),
  buffers: v.array(v.object({ name: v.string(), sp: species, mol: v.number() })),
  adjuster: v.object({
    name: v.string(),
    wTrue: v.number(),
    mw: v.number(),
    sid: v.number(),
    sp: v.nullable(species),
  }),
  grams: v.number(),
  target: v.object({ lo: v.number(), hi: v.number() }),
})
const expectedShape = v.object({ pH: v.number(), gramsToCentre: v.number() })

const tolerance = 1e-8

/** The simulator that the pH bench doses into. */
export function checkChargeBalance(given: unknown, expected: unknown): void {
  const mixture = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const { lo, hi } = mixture.target
  expectAbsolute(phOf(mixture, mixture.grams), answer.pH, tolerance, 'pH')
  expectRelative(gramsTo(mixture, (lo + hi) / 2), answer.gramsToCentre, tolerance, 'grams to the centre')
}
