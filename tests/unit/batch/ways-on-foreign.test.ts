import { describe, expect, test } from 'vitest'
import { consequencesOf, type RemedyOffer, remediesFor } from '../../../src/batch/deviation'
import type { RemedyKind } from '../../../src/batch/kinds'
import { targetOf, totalsOf } from '../../../src/batch/progress'
import { compositionAsMade } from '../../../src/trade/composition'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const offerOf = (bench: TestBench, remedy: RemedyKind): RemedyOffer => {
  const offer = remediesFor(bench.state, bench.deviation().id).find((each) => each.remedy === remedy)
  if (!offer) throw new Error(`no ${remedy}`)
  return offer
}

describe('foreign material', () => {
  const wrongTub = (more: { most?: number; netUg?: number } = {}, after = 'b-squalane') => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, after)
    const add = {
      do: 'add-unplanned',
      name: 'Castor oil',
      vessel: 'oil',
      netUg: grams(6),
      reason: 'wrong tub',
    } as const
    bench.intend({ ...add, ...more })
    return bench
  }

  test('[R30] is a deviation where it puts the product outside a limit, and says which', () => {
    const bench = wrongTub()
    expect(bench.deviation()).toMatchObject({ cause: 'foreign', direction: 'over', byUg: grams(6) })
    const rows = consequencesOf(bench.state, bench.deviation().id)?.rows ?? []
    expect(rows[0]?.line).toBe(bench.deviation().line)
    expect(rows.filter(({ breaks }) => breaks).length).toBeGreaterThan(0)
    expect(wrongTub({ netUg: grams('0.05') }).state.deviations.size).toBe(0)
  })

  test('[R30] it is diluted under the most that its material allows', () => {
    const bench = wrongTub({ most: 0.01 }, 'a-phytate')
    const offer = offerOf(bench, 'extra')
    expect(offer).toMatchObject({ feasible: true, endsUg: grams(600), breaks: 0 })
    bench.settle('extra')
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(600))
    expect(shareOfForeign(bench)).toBeLessThanOrEqual(0.01)
  })

  test('[R30] scaling cannot make it part of the formula', () => {
    expect(offerOf(wrongTub(), 'scale')).toMatchObject({ feasible: false, why: { code: 'LINE_NOT_IN_FORMULA' } })
  })

  test('[R30] accepted, it is part of the batch, and later remedies reckon with it', () => {
    const bench = wrongTub()
    bench.settle('accept')
    expect(bench.state.totalUg).toBe(grams(506))
    runUpTo(bench, 'b-emulsifier')
    bench.weigh('b-emulsifier', '18.62')
    expect(offerOf(bench, 'extra')).toMatchObject({ feasible: true, breaks: 0 })
    bench.settle('extra')
    const { totalUg } = bench.state
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(totalUg)
  })

  const shareOfForeign = (bench: TestBench): number => {
    const [component] = bench.state.unplanned.keys()
    return compositionAsMade(bench.state.ledger).get(component ?? '') ?? 0
  }
})

describe('lost mass', () => {
  test('[R31] a spill takes its share of each line; putting as much in again brings the product back', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-emulsifier')
    bench.intend({ do: 'spill', vessel: 'oil', massUg: grams(12), reason: 'knocked over' })
    expect(bench.deviation()).toMatchObject({ cause: 'loss', direction: 'under' })
    expect(bench.deviation().lost).toEqual([
      { line: 'caprylic-capric-triglyceride', massUg: grams(7) },
      { line: 'squalane', massUg: grams(3) },
      { line: 'shea-butter', massUg: grams(2) },
    ])
    bench.settle('scale')
    expect(bench.state.totalUg).toBe(grams(512))
    expect(targetOf(bench.state, 'b-shea')).toBe(grams(12))
    runUpTo(bench, 'sample')
    expect(bench.massIn('main')).toBe(grams(500))
    expect((bench.state.ledger.vessels.get('main')?.masses.get('shea-butter') ?? 0) / grams(500)).toBeCloseTo(0.02, 9)
  })

  test('[R31] left so, the batch ends lighter and nothing is asked for again', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-emulsifier')
    bench.intend({ do: 'spill', vessel: 'oil', massUg: grams(12), reason: 'knocked over' })
    bench.settle('accept')
    expect(bench.state.totalUg).toBe(grams(500))
    runUpTo(bench, 'sample')
    expect(bench.massIn('main')).toBe(grams(488))
  })
})
