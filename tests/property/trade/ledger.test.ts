import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  addedInAll,
  contentsOf,
  inSink,
  type Ledger,
  type Movement,
  massIn,
  openLedger,
  post,
  type Sink,
} from '../../../src/trade/ledger'
import { copyLedger } from '../../../src/trade/ledger-copy'
import { addedOf, heldInAll, sinkContents, vesselsOf } from '../../../src/trade/ledger-sums'
import { propertyRuns } from '../runs'

const sinks: readonly Sink[] = ['evaporated', 'sampled', 'left-behind', 'spilled', 'discarded', 'filled']
const components = ['water', 'oil', 'gum', 'salt']
const vessel = fc.constantFrom('beaker', 'side beaker', 'cup')
const component = fc.constantFrom(...components)
/** Single micrograms, where rounding bites, up to a large batch, and what must be refused. */
const massUg = fc.oneof(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 2e10 }), fc.constantFrom(0, -5, 0.5))

const movement: fc.Arbitrary<Movement> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('add' as const), to: vessel, component, massUg }) },
  fc.record({ kind: fc.constant('transfer' as const), from: vessel, to: vessel, residueUg: massUg }),
  fc.record({ kind: fc.constant('evaporate' as const), from: vessel, component, massUg }),
  fc.record(
    {
      kind: fc.constant('remove' as const),
      from: vessel,
      sink: fc.constantFrom('sampled', 'left-behind', 'spilled', 'discarded', 'filled'),
      massUg: fc.oneof(massUg, fc.constant('all' as const)),
      component,
    },
    { requiredKeys: ['kind', 'from', 'sink', 'massUg'] },
  ),
)
const back = fc.record({ kind: fc.constant('return' as const), to: vessel, massUg })
const movements = fc.array(fc.oneof({ weight: 6, arbitrary: movement }, back), { minLength: 1, maxLength: 60 })

const sum = (masses: Iterable<number>): number => [...masses].reduce((total, mass) => total + mass, 0)

function heldOf(ledger: Ledger, of: string): number {
  const accounts = [
    ...vesselsOf(ledger).map((name) => contentsOf(ledger, name)),
    ...sinks.map((sink) => sinkContents(ledger, sink)),
  ]
  return sum(accounts.map((account) => account.get(of) ?? 0))
}

test('[L1] mass is conserved exactly over any sequence of movements, in all and by component', () => {
  fc.assert(
    fc.property(movements, (sequence) => {
      const ledger = openLedger()
      let addedUg = 0
      for (const each of sequence) {
        const posted = post(ledger, each)
        if (posted.ok && each.kind === 'add') addedUg += posted.value
        expect(heldInAll(ledger) + inSink(ledger, ...sinks)).toBe(addedUg)
        expect(addedInAll(ledger)).toBe(addedUg)
      }
      for (const each of components) expect(heldOf(ledger, each)).toBe(addedOf(ledger, each))
    }),
    propertyRuns,
  )
})

test('[L1] nothing is ever below zero or a part of a microgram, and running sums are the sums', () => {
  fc.assert(
    fc.property(movements, (sequence) => {
      const ledger = openLedger()
      for (const each of sequence) post(ledger, each)
      for (const name of vesselsOf(ledger)) {
        const masses = [...contentsOf(ledger, name).values()]
        expect(masses.every((mass) => Number.isSafeInteger(mass) && mass > 0)).toBe(true)
        expect(massIn(ledger, name)).toBe(sum(masses))
      }
      for (const sink of sinks) expect(inSink(ledger, sink)).toBe(sum(sinkContents(ledger, sink).values()))
    }),
    propertyRuns,
  )
})

test('[L5] a refused movement changes nothing, and a copy keeps what it was', () => {
  fc.assert(
    fc.property(movements, (sequence) => {
      const ledger = openLedger()
      for (const each of sequence) {
        const before = copyLedger(ledger)
        const kept = copyLedger(before)
        if (!post(ledger, each).ok) expect(ledger).toEqual(before)
        expect(before).toEqual(kept)
      }
    }),
    propertyRuns,
  )
})

test('[L2] a proportional removal keeps every fraction to within a microgram', () => {
  const masses = fc.array(fc.integer({ min: 1, max: 2e10 }), { minLength: 1, maxLength: 30 })
  fc.assert(
    fc.property(masses, fc.double({ min: 0, max: 1, noNaN: true }), (held, part) => {
      const ledger = openLedger()
      held.forEach((mass, index) => {
        post(ledger, { kind: 'add', to: 'beaker', component: `${index}`, massUg: mass })
      })
      const totalUg = sum(held)
      const takenUg = Math.floor(totalUg * part)
      post(ledger, { kind: 'transfer', from: 'beaker', to: 'jar', residueUg: takenUg })
      const left = sinkContents(ledger, 'left-behind')
      held.forEach((mass, index) => {
        const exact = (mass * takenUg) / totalUg
        expect(Math.abs((left.get(`${index}`) ?? 0) - exact)).toBeLessThan(1.001)
      })
    }),
    propertyRuns,
  )
})
