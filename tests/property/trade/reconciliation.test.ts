import fc from 'fast-check'
import { expect, test } from 'vitest'
import { reconcile } from '../../../src/trade/composition'
import { type Movement, openLedger, post } from '../../../src/trade/ledger'
import { lossSteps } from '../../../src/trade/loss-steps'
import { propertyRuns } from '../runs'

const vessel = fc.constantFrom('beaker', 'side beaker', 'cup')
const component = fc.constantFrom('water', 'oil', 'gum')
const massUg = fc.oneof(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 2e10 }))

const movement: fc.Arbitrary<Movement> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('add' as const), to: vessel, component, massUg }) },
  fc.record({ kind: fc.constant('transfer' as const), from: vessel, to: vessel, residueUg: massUg }),
  fc.record({ kind: fc.constant('evaporate' as const), from: vessel, component, massUg }),
  fc.record({
    kind: fc.constant('remove' as const),
    from: vessel,
    sink: fc.constantFrom('sampled', 'left-behind', 'spilled', 'discarded', 'filled'),
    massUg: fc.oneof(massUg, fc.constant('all' as const)),
  }),
)

/** Any ledger, any plan, and a reading of what stands in the vessels that may lie on either side of the books. */
const batches = fc.tuple(
  fc.array(movement, { minLength: 1, maxLength: 60 }),
  fc.integer({ min: 1, max: 2e10 }),
  fc.integer({ min: 0, max: 2e10 }),
)

const reconciled = ([movements, theoreticalUg, standingUg]: readonly [readonly Movement[], number, number]) => {
  const ledger = openLedger()
  for (const each of movements) post(ledger, each)
  return reconcile(ledger, theoreticalUg, standingUg)
}

test('[L85] what was put in is filled, lost by name, left, or unexplained: exactly, in any ledger', () => {
  fc.assert(
    fc.property(batches, (batch) => {
      const sums = reconciled(batch)
      const { filledUg, sampledUg, evaporatedUg, residueUg, spilledUg, discardedUg, unexplainedUg } = sums
      const named = filledUg + sampledUg + evaporatedUg + residueUg + spilledUg + discardedUg
      expect(named + (unexplainedUg ?? sums.inVesselsUg)).toBe(sums.addedUg)
      expect(unexplainedUg === null).toBe(filledUg === 0)
    }),
    propertyRuns,
  )
})

test('[L85] the steps lead from the theoretical mass to the actual one, each from where the last one ended', () => {
  fc.assert(
    fc.property(batches, (batch) => {
      const sums = reconciled(batch)
      const { theoreticalUg, steps, actualUg } = lossSteps(sums)
      expect(actualUg).toBe(sums.unexplainedUg === null ? sums.inVesselsUg : sums.filledUg)
      expect(theoreticalUg + steps.reduce((sum, { changeUg }) => sum + changeUg, 0)).toBe(actualUg)
      steps.forEach(({ fromUg, toUg, changeUg }, index) => {
        expect(fromUg).toBe(index === 0 ? theoreticalUg : steps[index - 1]?.toUg)
        expect(toUg - fromUg).toBe(changeUg)
      })
    }),
    propertyRuns,
  )
})
