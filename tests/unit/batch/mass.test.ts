import { describe, expect, test } from 'vitest'
import { makeUpOf } from '../../../src/batch/make-up'
import { isDone, strataOf, totalsOf } from '../../../src/batch/progress'
import { summaryOf } from '../../../src/batch/summary-of'
import { addedInAll, contentsOf, inSink } from '../../../src/trade/ledger'
import { heldInAll, sinkContents } from '../../../src/trade/ledger-sums'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const at = (stop?: string): TestBench => {
  const bench = openTestBench(lotionHeader())
  if (stop !== undefined) runUpTo(bench, stop)
  return bench
}

const balanced = (bench: TestBench): void => {
  const { ledger } = bench.state
  const sinks = inSink(ledger, 'evaporated', 'sampled', 'left-behind', 'spilled', 'discarded', 'filled')
  expect(addedInAll(ledger)).toBe(heldInAll(ledger) + sinks)
  expect(bench.state.doubts).toEqual([])
}

describe('cups and phases that go in', () => {
  test('[W7] a cup goes in less what is left in it, rinsed with held-back water', () => {
    const bench = at('a-slurry-in')
    bench.charge('a-slurry-in', { residue: '0.13', rinse: '4' })
    expect(bench.massIn('slurry')).toBe(0)
    expect(inSink(bench.state.ledger, 'left-behind')).toBe(grams('0.13'))
    expect(bench.massIn('main')).toBe(grams('349.85') + grams(26) - grams('0.13'))
    expect(bench.state.heldBackUg).toBe(grams('13.5'))
    expect(sinkContents(bench.state.ledger, 'left-behind').get('propanediol')).toBe(grams('0.1'))
    balanced(bench)
  })

  test('[W7] residue and rinse are what can be: not more than there is, not less than nothing', () => {
    const bench = at('a-slurry-in')
    const charge = (residue: string, rinse: string) =>
      ({ do: 'charge', step: 'a-slurry-in', residueUg: grams(residue), rinseUg: grams(rinse) }) as const
    expect(bench.refusal(charge('22.01', '0'))).toMatchObject({ code: 'MORE_THAN_HELD', heldUg: grams(22) })
    expect(bench.refusal(charge('0', '17.51'))).toMatchObject({ code: 'RINSE_ABOVE_HELD_BACK' })
    expect(bench.refusal(charge('-1', '0')).code).toBe('MASS_NOT_POSITIVE')
    expect(bench.refusal(charge('0', '-1')).code).toBe('MASS_NOT_POSITIVE')
    expect(bench.refusal({ do: 'combine', step: 'a-slurry-in', residueUg: 0, rinseUg: 0 }).code).toBe(
      'NOT_FOR_THIS_STEP',
    )
    bench.charge('a-slurry-in')
    expect(bench.refusal(charge('0', '0')).code).toBe('STEP_DONE')
  })

  test('[W7] combining moves a phase less its residue, with rinse, and what is read later is of both', () => {
    const bench = at('b-into-a')
    for (const vessel of ['main', 'oil']) bench.read(vessel, 75)
    const before = bench.massIn('main')
    bench.combine('b-into-a', { residue: '0.62', rinse: '3' })
    expect(bench.massIn('main')).toBe(before + grams(90) + grams(3) - grams('0.62'))
    expect(strataOf(bench.state, 'main').map(({ letter }) => letter)).toEqual(['A', 'B'])
    expect(bench.massIn('oil')).toBe(0)
    balanced(bench)
  })

  test('[W7] a vessel that has no room refuses what would run over', () => {
    const header = lotionHeader()
    const vessels = header.vessels.map((each) => (each.id === 'main' ? { ...each, capacityUg: grams(370) } : each))
    const bench = openTestBench({ ...header, vessels })
    runUpTo(bench, 'a-slurry-in')
    const charge = { do: 'charge', step: 'a-slurry-in', residueUg: 0, rinseUg: 0 } as const
    expect(bench.refusal(charge)).toMatchObject({ code: 'OVER_VESSEL', massUg: grams(22), roomUg: grams('20.15') })
    const salt = { do: 'add-unplanned', name: 'Salt', vessel: 'main', netUg: grams(21), reason: '' } as const
    expect(bench.refusal(salt).code).toBe('OVER_VESSEL')
  })
})

describe('what was not planned', () => {
  test('[L1] anything can be added at any time, and counts in mass, stock and composition', () => {
    const bench = at('a-hydrate')
    const salt = {
      do: 'add-unplanned',
      name: ' Sea salt ',
      vessel: 'main',
      netUg: grams(2),
      lot: 'lot-x',
      reason: '',
    } as const
    bench.intend(salt)
    const [unplanned] = bench.state.unplanned.values()
    expect(unplanned?.body).toMatchObject({ name: 'Sea salt', vessel: 'main' })
    expect(contentsOf(bench.state.ledger, 'main').get(unplanned?.body.component ?? '')).toBe(grams(2))
    expect(bench.state.usedByLot.get('lot-x')).toBe(grams(2))
    expect(strataOf(bench.state, 'main').at(-1)).toEqual({ letter: '+', massUg: grams(2) })
    expect(bench.refusal({ ...salt, name: ' ' }).code).toBe('NAME_MISSING')
    expect(bench.refusal({ ...salt, netUg: 0 }).code).toBe('MASS_NOT_POSITIVE')
    expect(bench.refusal({ ...salt, netUg: Number.NaN }).code).toBe('MASS_NOT_WHOLE')
    expect(bench.refusal({ ...salt, vessel: 'bucket' }).code).toBe('UNKNOWN_VESSEL_HERE')
    balanced(bench)
  })

  test('[L1] a spill takes its share of everything, with a reason, and not more than there was', () => {
    const bench = at('a-hydrate')
    const spill = { do: 'spill', vessel: 'main', massUg: grams(50), reason: 'knocked' } as const
    const before = contentsOf(bench.state.ledger, 'main')
    bench.intend(spill)
    const spilled = sinkContents(bench.state.ledger, 'spilled')
    for (const [line, massUg] of before)
      expect(spilled.get(line) ?? 0).toBeCloseTo((massUg * grams(50)) / grams('371.85'), -1)
    expect(bench.refusal({ ...spill, reason: '' }).code).toBe('REASON_MISSING')
    expect(bench.refusal({ ...spill, massUg: grams(400) }).code).toBe('MORE_THAN_HELD')
    expect(bench.refusal({ ...spill, vessel: 'oil' }).code).toBe('MORE_THAN_HELD')
    expect(bench.refusal({ ...spill, vessel: 'bucket' }).code).toBe('UNKNOWN_VESSEL_HERE')
    balanced(bench)
  })
})

describe('making up', () => {
  const gross = (bench: TestBench, lost: string) => grams('312.46') + bench.massIn('main') - grams(lost)

  test('[L51] the loss seen on the balance is water, and what is added brings the batch to its total exactly', () => {
    const bench = at('make-up')
    const grossUg = gross(bench, '7.25')
    const makeup = makeUpOf(bench.state, 'main', 'aqua', grossUg)
    // Held back 17.5 g, and the 2.5 g of acid that were expected and not needed.
    expect(makeup).toMatchObject({ lossUg: grams('7.25'), aboveUg: 0, toAddUg: grams('27.25') })
    bench.intend({ do: 'make-up', step: 'make-up', grossUg, netUg: makeup.toAddUg, lot: 'lot-w-0831' })
    expect(totalsOf(bench.state).inUg).toBe(grams(500))
    expect(bench.massIn('main')).toBe(grams(500))
    expect(sinkContents(bench.state.ledger, 'evaporated')).toEqual(new Map([['aqua', grams('7.25')]]))
    expect(bench.state.heldBackUg).toBe(0)
    expect(isDone(bench.state, 'make-up')).toBe(true)
    balanced(bench)
  })

  test('[L51] what was left behind, spilled or sampled left with its share of everything and is not made up', () => {
    const bench = at('a-slurry-in')
    bench.charge('a-slurry-in', { residue: '0.5' })
    runUpTo(bench, 'make-up')
    bench.intend({ do: 'spill', vessel: 'main', massUg: grams(10), reason: 'knocked' })
    expect(makeUpOf(bench.state, 'main', 'aqua').toAddUg).toBe(grams(20))
    runUpTo(bench, 'sample')
    expect(bench.massIn('main')).toBe(grams('489.5'))
  })

  test('[L51] a skipped line leaves the batch lighter: water does not take its place', () => {
    const bench = at('c-tocopherol')
    bench.intend({ do: 'skip-step', step: 'c-tocopherol', reason: 'none left' })
    runUpTo(bench, 'make-up')
    expect(makeUpOf(bench.state, 'main', 'aqua').toAddUg).toBe(grams(20))
    runUpTo(bench, 'sample')
    expect(bench.massIn('main')).toBe(grams('498.5'))
  })

  test('[L51] a skipped line that was weighed in part leaves its rest out', () => {
    const bench = at('c-tocopherol')
    bench.weigh('c-tocopherol', '0.5')
    bench.intend({ do: 'skip-step', step: 'c-tocopherol', reason: 'none left' })
    runUpTo(bench, 'sample')
    expect(bench.massIn('main')).toBe(grams(499))
  })

  test('[L51] more than the ledger knows of is asked about; a loss of more than there was water is impossible', () => {
    const bench = at('make-up')
    const above = { do: 'make-up', step: 'make-up', grossUg: gross(bench, '-5'), netUg: 0 } as const
    expect(bench.gatesOn(above)).toEqual(['ABOVE_THEORY'])
    expect(bench.refusal({ ...above, grossUg: grams('312.46') })).toMatchObject({ code: 'LOSS_IMPOSSIBLE' })
    expect(bench.refusal({ ...above, grossUg: grams(10) })).toMatchObject({ code: 'BELOW_TARE' })
    expect(bench.refusal({ ...above, netUg: -1 }).code).toBe('MASS_NOT_POSITIVE')
    bench.pass('make-up', `ABOVE_THEORY:${grams(5)}`)
    bench.intend(above)
    expect(isDone(bench.state, 'make-up')).toBe(true)
    expect(inSink(bench.state.ledger, 'evaporated')).toBe(0)
  })

  test('[L51] a difference that the balance cannot tell from nothing is nothing', () => {
    const bench = at('make-up')
    expect(makeUpOf(bench.state, 'main', 'aqua', gross(bench, '0.01'))).toMatchObject({ lossUg: 0, aboveUg: 0 })
  })

  test('[L51] a loss can be recorded at any time; a gain is no loss, and without a tare nothing is known', () => {
    const bench = at('b-into-a')
    bench.intend({ do: 'record-loss', vessel: 'main', grossUg: gross(bench, '3') })
    expect(inSink(bench.state.ledger, 'evaporated')).toBe(grams(3))
    bench.intend({ do: 'record-loss', vessel: 'main', grossUg: gross(bench, '0') })
    expect(inSink(bench.state.ledger, 'evaporated')).toBe(grams(3))
    expect(bench.gatesOn({ do: 'record-loss', vessel: 'main', grossUg: gross(bench, '-2') })).toEqual(['ABOVE_THEORY'])
    expect(bench.refusal({ do: 'record-loss', vessel: 'bucket', grossUg: grams(1) }).code).toBe('NO_TARE_HERE')
    expect(bench.refusal({ do: 'record-loss', vessel: 'main', grossUg: grams(100) }).code).toBe('LOSS_IMPOSSIBLE')
    balanced(bench)
  })
})

describe('what leaves the batch', () => {
  test('[L1] samples and filling take from where the contents are now, and finish their steps', () => {
    const bench = at('sample')
    const sample = {
      do: 'sample',
      step: 'sample',
      vessel: 'oil',
      massUg: grams(90),
      jars: 3,
      purpose: 'checks',
    } as const
    bench.intend(sample)
    expect(bench.massIn('main')).toBe(grams(410))
    expect(bench.refusal(sample).code).toBe('STEP_DONE')
    const fill = { do: 'fill', step: 'fill', vessel: 'main', massUg: grams(408), units: 2 } as const
    expect(bench.refusal({ ...fill, massUg: grams(411) }).code).toBe('MORE_THAN_HELD')
    expect(bench.refusal({ ...fill, massUg: 0 }).code).toBe('MASS_NOT_POSITIVE')
    bench.intend(fill)
    expect(isDone(bench.state, 'fill')).toBe(true)
    balanced(bench)
    expect(summaryOf(bench.state).cup.strata.length).toBeGreaterThan(0)
  })

  test('[L1] an unplanned sample belongs to no step', () => {
    const bench = at('a-hydrate')
    bench.intend({ do: 'sample', vessel: 'main', massUg: grams(5), jars: 1, purpose: 'a look' })
    expect(inSink(bench.state.ledger, 'sampled')).toBe(grams(5))
    expect(isDone(bench.state, 'sample')).toBe(false)
  })
})
