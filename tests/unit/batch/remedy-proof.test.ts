import { describe, expect, test } from 'vitest'
import { proofOf, remediesFor } from '../../../src/batch/deviation'
import { spareOf } from '../../../src/batch/finished-rows'
import { targetOf } from '../../../src/batch/progress'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

function emulsifierOver(): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'b-emulsifier')
  bench.weigh('b-emulsifier', '18.62')
  return bench
}

describe('the proof of a way on', () => {
  test('[R44] has every line and every limit over several lines, before and after, with what is to spare', () => {
    const bench = emulsifierOver()
    const { id } = bench.deviation()
    const lines = [...bench.state.plan.lines.keys()]
    const offers = remediesFor(bench.state, id).filter(({ feasible, remedy }) => feasible && remedy !== 'discard')
    expect(offers.length).toBeGreaterThan(3)
    for (const offer of offers) {
      const rows = proofOf(bench.state, id, offer)
      expect(rows.map(({ line }) => line)).toEqual([...lines, 'most-phenoxyethanol'])
      const shares = rows.filter(({ line }) => lines.includes(line))
      expect(shares.reduce((sum, { after }) => sum + after, 0)).toBeCloseTo(1, 9)
      expect(rows.filter(({ breaks }) => breaks).length).toBe(offer.remedy === 'accept' ? 1 : offer.breaks)
      for (const row of rows) expect(spareOf(row) < -1e-9).toBe(row.breaks)
      expect(offer.merits.cost).toBeGreaterThan(0)
    }
  })

  test('[R44] of what cannot be reckoned there is none', () => {
    const bench = emulsifierOver()
    const discard = remediesFor(bench.state, bench.deviation().id).find(({ remedy }) => remedy === 'discard')
    expect(discard && proofOf(bench.state, bench.deviation().id, discard)).toEqual([])
  })

  test('[R47] struck out, a way gives the earlier targets back, and the next deviation starts from the plan as it is', () => {
    const bench = emulsifierOver()
    bench.settle('extra')
    expect(targetOf(bench.state, 'b-cetearyl')).not.toBeUndefined()
    const revised = bench.state.totalUg
    bench.weigh('b-cetearyl', '14.5')
    const again = remediesFor(bench.state, bench.deviation().id).find(({ remedy }) => remedy === 'qs')
    expect(again?.endsUg).toBe(revised)
    const remedy = bench.state.entries.find(({ event }) => event.kind === 'remedy-chosen')
    bench.strike(remedy?.event.id ?? '')
    expect(bench.state.totalUg).toBe(grams(500))
    expect(targetOf(bench.state, 'b-cetearyl')).toBe(grams('12.5'))
    const open = [...bench.state.deviations.values()].filter(({ settled }) => !settled)
    expect(open.map(({ line }) => line).sort()).toEqual(['cetearyl-alcohol', 'glyceryl-stearate-peg-100'])
  })
})
