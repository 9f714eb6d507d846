import { describe, expect, test } from 'vitest'
import { makeUpOf } from '../../../src/batch/make-up'
import { makeUpRows } from '../../../src/batch/make-up-rows'
import { recordOf } from '../../../src/batch/record'
import { contentsOf, inSink } from '../../../src/trade/ledger'
import { roundToStep } from '../../../src/trade/mass'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

function atMakeUp(change: (header: ReturnType<typeof lotionHeader>) => ReturnType<typeof lotionHeader> = (h) => h) {
  const bench = openTestBench(change(lotionHeader()))
  runUpTo(bench, 'make-up')
  return bench
}

const tareUg = grams('312.46')
const gross = (bench: TestBench, lost: string) => tareUg + bench.massIn('main') - grams(lost)
const make = (bench: TestBench, lost: string, net = '0') =>
  ({ do: 'make-up', step: 'make-up', grossUg: gross(bench, lost), netUg: grams(net) }) as const

describe('what make-up proposes', () => {
  test('[L80] is what the balance under the vessel shows, and the gross reading that follows from it', () => {
    const bench = atMakeUp()
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '7.254321'))
    expect(makeup.toAddUg).toBe(grams('27.254321'))
    expect(makeup.balance?.stepUg).toBe(10_000)
    expect(makeup.proposedUg).toBe(grams('27.25'))
    expect(makeup.fullGrossUg).toBe(gross(bench, '7.254321') + grams('27.25'))
  })

  test('[L80] is coarser on the balance that alone carries the vessel', () => {
    const bench = atMakeUp((header) => ({
      ...header,
      balances: header.balances.map((each) => (each.stepUg < 100_000 ? { ...each, capacityUg: grams(400) } : each)),
    }))
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '7.254'))
    expect(makeup.balance?.stepUg).toBe(100_000)
    expect(makeup.proposedUg).toBe(roundToStep(makeup.toAddUg, 100_000))
  })

  test('[L80] is never more than the vessel takes', () => {
    const bench = atMakeUp((header) => ({
      ...header,
      vessels: header.vessels.map((each) => (each.id === 'main' ? { ...each, capacityUg: grams('490.006') } : each)),
    }))
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '5'))
    expect(makeup.toAddUg).toBe(grams(25))
    expect(makeup.roomUg).toBe(grams('490.006') - bench.massIn('main') + grams(5))
    expect(makeup.proposedUg).toBe(grams(15))
    bench.intend({ do: 'make-up', step: 'make-up', grossUg: gross(bench, '5'), netUg: makeup.proposedUg })
  })

  test('[L80] is nothing where the balance cannot show what is missing', () => {
    const bench = atMakeUp()
    bench.intend({ do: 'add-unplanned', name: 'Water', vessel: 'main', netUg: grams('20'), reason: 'rinse' })
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '0.003'))
    expect(makeup).toMatchObject({ toAddUg: 0, proposedUg: 0, lossUg: 0 })
  })
})

describe('a reading above the books', () => {
  test('[L81] corrects nothing, is asked about, and every other gain is asked about anew', () => {
    const bench = atMakeUp()
    expect(bench.gatesOn(make(bench, '-5'))).toEqual(['ABOVE_THEORY'])
    bench.pass('make-up', `ABOVE_THEORY:${grams(5)}`)
    expect(bench.gatesOn(make(bench, '-6'))).toEqual(['ABOVE_THEORY'])
    expect(makeUpOf(bench.state, 'main', 'aqua', gross(bench, '-5')).toAddUg).toBe(grams(20))
  })

  test('[L81] is gone once what went in is written down, or the tare is put right', () => {
    const written = atMakeUp()
    written.intend({ do: 'add-unplanned', name: 'Water', vessel: 'main', netUg: grams(5), reason: 'a rinse' })
    expect(makeUpOf(written.state, 'main', 'aqua', gross(written, '0'))).toMatchObject({ aboveUg: 0, lossUg: 0 })

    const tared = atMakeUp()
    const readUg = gross(tared, '-5')
    tared.intend({ do: 'tare', vessel: 'main', tareUg: tareUg + grams(5), standsIn: 'propeller' })
    expect(makeUpOf(tared.state, 'main', 'aqua', readUg)).toMatchObject({ aboveUg: 0, lossUg: 0 })
  })

  test('[L81] gone on with, it stands in the record as what it was', () => {
    const bench = atMakeUp()
    bench.pass('make-up', `ABOVE_THEORY:${grams(5)}`)
    bench.intend(make(bench, '-5', '20'))
    expect(recordOf(bench.state).mass.makeUps[0]).toMatchObject({ aboveUg: grams(5), netUg: grams(20) })
    expect(inSink(bench.state.ledger, 'evaporated')).toBe(0)
  })

  test('[L81] a net reading typed for a gross one is below the tare, and refused as that', () => {
    const bench = atMakeUp()
    expect(bench.refusal({ ...make(bench, '0'), grossUg: grams('200') })).toEqual({
      code: 'BELOW_TARE',
      grossUg: grams('200'),
      tareUg,
    })
  })
})

describe('composition as made', () => {
  test('[L82] before and after both sum to the whole, and only the water gains', () => {
    const bench = atMakeUp()
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '7.25'))
    const rows = makeUpRows(bench.state, makeup, 'aqua', makeup.proposedUg)
    const sum = (end: 'before' | 'after') => rows.reduce((total, row) => total + row[end], 0)
    expect(sum('before')).toBeCloseTo(1, 12)
    expect(sum('after')).toBeCloseTo(1, 12)
    for (const row of rows) {
      if (row.line === 'aqua') expect(row.after).toBeGreaterThan(row.before)
      else expect(row.after).toBeLessThanOrEqual(row.before)
    }
  })

  test('[L82] after is what the vessel then holds, line by line', () => {
    const bench = atMakeUp()
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '7.25'))
    const rows = makeUpRows(bench.state, makeup, 'aqua', makeup.proposedUg)
    bench.intend(make(bench, '7.25', '27.25'))
    const held = contentsOf(bench.state.ledger, 'main')
    for (const { line, after } of rows) expect(after).toBeCloseTo((held.get(line) ?? 0) / bench.massIn('main'), 12)
  })

  test('[L82] what evaporation brought over its limit is inside once it is made up', () => {
    const bench = atMakeUp()
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '30'))
    const rows = makeUpRows(bench.state, makeup, 'aqua', makeup.proposedUg)
    expect(rows.filter((row) => row.was === 'over').length).toBeGreaterThan(5)
    // Acid that was expected and not needed is no line short: its least is nought.
    expect(rows.filter((row) => row.is !== 'within').map(({ line }) => line)).toEqual([])
  })

  test('[L82] too much water brings lines under their limits, and a stranger is a row of its own', () => {
    const bench = atMakeUp()
    bench.intend({
      do: 'add-unplanned',
      name: 'Colour',
      vessel: 'main',
      netUg: grams(2),
      reason: 'colour',
      most: 0.001,
    })
    bench.state.deviations.clear()
    const makeup = makeUpOf(bench.state, 'main', 'aqua', gross(bench, '0'))
    const rows = makeUpRows(bench.state, makeup, 'aqua', grams(120))
    expect(rows.find(({ line }) => line === 'squalane')).toMatchObject({ is: 'under' })
    expect(rows.at(-1)).toMatchObject({ name: 'Colour', high: 0.001, is: 'over' })
  })
})
