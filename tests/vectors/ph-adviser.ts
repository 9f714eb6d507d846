import * as v from 'valibot'
import { expect } from 'vitest'
import { advisePh } from '../../src/trade/acidity'
import { microgramsFromGrams } from '../../src/trade/mass'
import { gramsFromMicrograms } from '../../src/trade/mass-ratio'
import { expectAbsolute } from './close'

const givenShape = v.object({
  mass: v.number(),
  target: v.object({ lo: v.number(), hi: v.number() }),
  adj: v.object({
    w: v.number(),
    mw: v.number(),
    sp: v.nullable(v.object({ z0: v.number(), pKas: v.array(v.number()) })),
    sid: v.number(),
    dir: v.number(),
  }),
  d: v.number(),
  history: v.array(v.object({ g: v.number(), pH: v.number() })),
  beta0: v.number(),
  prior: v.nullish(v.object({ pH: v.array(v.number()), Q: v.array(v.number()) })),
})
const expectedShape = v.union([v.object({ grams: v.number() }), v.object({ stop: v.string() })])

export function checkPhAdviser(given: unknown, expected: unknown): void {
  const { mass, target, adj, d, history, beta0, prior } = v.parse(givenShape, given)
  const answer = v.parse(expectedShape, expected)
  const advice = advisePh({
    massUg: microgramsFromGrams(mass),
    window: { low: target.lo, high: target.hi },
    adjuster: {
      kind: adj.dir < 0 ? 'acid' : 'base',
      strength: adj.w,
      molarMass: adj.mw,
      strongCharge: adj.sid,
      ...(adj.sp === null ? {} : { species: { fullCharge: adj.sp.z0, pKas: adj.sp.pKas } }),
    },
    stepUg: microgramsFromGrams(d),
    records: history.map(({ g, pH }) => ({ addedUg: microgramsFromGrams(g), ph: pH })),
    capacity: beta0,
    rule: 'plain',
    ...(prior ? { earlier: { ph: prior.pH, molPerKg: prior.Q } } : {}),
  })
  if ('stop' in answer) {
    expect(advice).toMatchObject({ ok: true, value: { do: 'stop' } })
    if (answer.stop === 'in window') expect(advice).toMatchObject({ value: { why: 'in-window' } })
    return
  }
  if (!advice.ok || advice.value.do !== 'add') throw new Error(`Proposes nothing: ${JSON.stringify(advice)}`)
  expectAbsolute(gramsFromMicrograms(advice.value.doseUg), answer.grams, d, 'grams')
}
