import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chargeToGo } from '../../../src/trade/capacity-trend'
import { learntFrom, ours } from '../../bench/ph/advisers'
import { makeBatch, runBatch, type Seen, type SimulatedBatch, sibling } from '../../bench/ph/batch'
import { phOf } from '../../bench/ph/mixture'
import { propertyRuns } from '../runs'

const batches = 2 * propertyRuns.numRuns

/** What a meter's noise hides. */
const hardlySeenPh = 0.05

/** Adds exactly what is said and reads exactly what is there. */
function exactly(batch: SimulatedBatch): readonly number[] {
  const { mass, target, adj, d } = batch
  const history: { g: number; pH: number }[] = [{ g: 0, pH: phOf(batch, 0) }]
  for (let addition = 0; addition < 40; addition += 1) {
    const asked = ours()({ mass, target, adj, d, history })
    if (typeof asked !== 'number') break
    const g = (history.at(-1)?.g ?? 0) + asked
    history.push({ g, pH: phOf(batch, g) })
  }
  return history.map(({ pH }) => pH)
}

describe('the adviser on exact charge balances', () => {
  test('[L71] read and dosed exactly, not one batch in a thousand passes the far edge, and every one comes to its window', () => {
    const passed: number[] = []
    for (let seed = 1; seed <= batches; seed += 1) {
      const batch = { ...makeBatch(seed), d: 0.000_001 }
      const { target, adj } = batch
      const phs = exactly({ ...batch, adjuster: { ...batch.adjuster, wTrue: adj.w } })
      const byPh = Math.max(...phs.slice(1).map((ph) => (adj.dir < 0 ? target.lo - ph : ph - target.hi)))
      if (byPh > 0) passed.push(byPh)
      const last = phs.at(-1) ?? 0
      expect(Math.max(target.lo - last, last - target.hi)).toBeLessThanOrEqual(hardlySeenPh)
    }
    expect(passed.length).toBeLessThanOrEqual(batches / 1000)
  })

  test('[L71] no mixture of acid groups takes less charge than the mean of their reacted shares promises', () => {
    const groups = fc.array(
      fc.record({
        mol: fc.double({ min: 0.01, max: 1, noNaN: true }),
        pKa: fc.double({ min: 1, max: 11, noNaN: true }),
      }),
      { minLength: 1, maxLength: 5 },
    )
    fc.assert(
      fc.property(groups, fc.double({ min: 0.05, max: 4, noNaN: true }), (mixture, byPh) => {
        const ph = 5
        const off = (pKa: number, at: number): number => 1 / (1 + 10 ** (pKa - at))
        const capacities = mixture.map(({ mol, pKa }) => Math.LN10 * mol * off(pKa, ph) * (1 - off(pKa, ph)))
        const capacity = capacities.reduce((sum, each) => sum + each, 0)
        const reacted =
          mixture.reduce((sum, { pKa }, index) => sum + (capacities[index] ?? 0) * off(pKa, ph), 0) / capacity
        const taken = mixture.reduce((sum, { mol, pKa }) => sum + mol * (off(pKa, ph + byPh) - off(pKa, ph)), 0)
        expect(chargeToGo({ capacity, reacted }, byPh)).toBeLessThanOrEqual(taken * (1 + 1e-9))
      }),
      propertyRuns,
    )
  })

  test('[L76] with a noisy meter and a human hand it ends in the window, seldom over, sooner with an earlier batch', () => {
    const batches = Array.from({ length: 150 }, (_, index) => makeBatch(77_000 + index))
    const alone = batches.map((batch) => runBatch(batch, ours()))
    const second = batches.map((batch, index) => {
      const seen: Seen = { ...batch, history: alone[index]?.history ?? [] }
      return runBatch(sibling(batch, batch.seed), ours(learntFrom(seen)))
    })
    const share = (count: number): number => count / batches.length
    for (const outcomes of [alone, second]) {
      expect(share(outcomes.filter(({ inWindow }) => inWindow).length)).toBeGreaterThanOrEqual(0.97)
      expect(share(outcomes.filter(({ over }) => over).length)).toBeLessThanOrEqual(0.02)
    }
    const additions = (outcomes: typeof alone): number => outcomes.reduce((sum, { adds }) => sum + adds, 0)
    expect(additions(second)).toBeLessThan(additions(alone) / 2)
  })
})
