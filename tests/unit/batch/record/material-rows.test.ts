import { describe, expect, test } from 'vitest'
import { lotCodesOf, materialRows, unplannedRows, vesselName } from '../../../../src/batch/record-materials.ts'
import { grams, openTestBench } from '../../../support/batch.ts'
import { benchWith, own } from '../../../support/few-steps.ts'
import { lotionHeader, withLots } from '../../../support/formulas.ts'
import { runUpTo } from '../../../support/run.ts'

const initials = (id: string): string => id.replace('person-', '').toUpperCase()

const squalane = {
  step: 'b-squalane',
  line: 'squalane',
  phase: 'B',
  name: 'Squalane',
  inci: 'Squalane',
  lots: ['SQ-115'],
  targetUg: grams(15),
  targetWas: [],
  actualUg: grams(15),
  verdict: 'within',
  stepUg: 1_000,
  deviation: false,
  more: [],
}

describe('[E65] the row of a material', () => {
  test('has line, lot, target, actual and each weighing with its vessel, balance and source', () => {
    const bench = benchWith({ kind: 'clean' })
    const entry = bench.step('b-squalane').weighings[0]
    const [, row] = materialRows(bench.state, initials)
    const atMs = bench.nowMs - 60_000
    expect(row).toEqual({
      ...squalane,
      asMade: expect.closeTo(15e6 / (15e6 + bench.step('a-water').netUg), 9),
      weighings: [
        {
          entry: entry?.id,
          atMs,
          by: 'RK',
          netUg: grams(15),
          lot: 'SQ-115',
          balance: 'Balance 1',
          vessel: 'Oil beaker',
          source: { kind: 'typed', raw: '15' },
          counts: true,
        },
      ],
    })
  })

  test('stands before anything is weighed, with the lot that was planned, and none where there is none', () => {
    const rowIn = (header: ReturnType<typeof lotionHeader>) =>
      materialRows(openTestBench(header).state, initials).find(({ step }) => step === 'b-squalane')
    const open = { ...squalane, actualUg: 0, verdict: 'none', weighings: [] }
    expect(rowIn(lotionHeader())).toEqual(open)
    expect(rowIn(withLots(lotionHeader(), 'squalane', () => []))).toEqual({ ...open, lots: [] })
  })

  test('says whether it is part, within, over; with its deviation, but for one that was struck out', () => {
    const bench = openTestBench(lotionHeader())
    const row = () => materialRows(bench.state, initials).find(({ step }) => step === 'b-squalane')
    bench.weigh('b-squalane', '5')
    expect(row()).toMatchObject({ verdict: 'part', deviation: false })
    const slip = bench.weigh('b-squalane', '12')
    expect(row()).toMatchObject({ verdict: 'over', deviation: true, actualUg: grams(17) })
    bench.strike(slip)
    expect(row()).toMatchObject({ verdict: 'part', deviation: false, actualUg: grams(5) })
    expect(row()?.weighings).toMatchObject([
      { counts: true },
      { counts: false, struck: { reason: 'wrong number', by: 'RK' } },
    ])
    bench.intend({ do: 'leave-short', step: 'b-squalane', reason: 'the bottle is empty' })
    expect(row()).toMatchObject({ verdict: 'under' })
  })

  test('of what a remedy changed has the earlier targets; of a second check who checked', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-squalane', '16.5')
    bench.settle('scale')
    runUpTo(bench, 'c-in')
    const rows = materialRows(bench.state, initials)
    const shea = rows.find(({ step }) => step === 'b-shea')
    expect(shea).toMatchObject({ targetUg: grams(11), targetWas: [grams(10)], verdict: 'within' })
    const kept = rows.find(({ step }) => step === 'c-preservative')
    expect(kept?.weighings[0]).toMatchObject({ by: 'RK', checkedBy: 'JT' })
  })

  test('of a line weighed in portions tells its share and its rinses in the first row alone', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    bench.combine(own, { rinse: '2' })
    const [water] = materialRows(bench.state, initials)
    expect(water?.more).toEqual([
      { entry: bench.events.at(-1)?.id, atMs: bench.nowMs, by: 'RK', what: 'rinse', massUg: grams(2) },
    ])
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(materialRows(bench.state, initials)[0]?.more).toEqual([])
  })

  test('of an adjuster names its check and judges nothing', () => {
    const bench = benchWith({ kind: 'adjust', property: 'pH', line: 'lactic-acid-10', check: 'ph' })
    bench.intend({ do: 'adjust', step: own, netUg: grams('0.8') })
    const row = materialRows(bench.state, initials).at(-1)
    expect(row).toMatchObject({
      step: own,
      line: 'lactic-acid-10',
      verdict: 'none',
      actualUg: grams('0.8'),
      toCheck: { id: 'ph', property: 'pH' },
    })
    expect(row?.weighings).toMatchObject([{ netUg: grams('0.8'), counts: true, vessel: 'Main beaker' }])
  })

  test('that was not planned has its reason, its lot by its code, and a share while it is in', () => {
    const bench = benchWith({ kind: 'clean' })
    const oat = { do: 'add-unplanned', name: 'Oat', vessel: 'main', netUg: grams(1), reason: 'softer' } as const
    const [first] = bench.intend(oat)
    const [second] = bench.intend({ ...oat, lot: 'lot-sq-115' })
    bench.strike(second?.id ?? '')
    const row = { atMs: bench.nowMs, by: 'RK', name: 'Oat', vessel: 'Main beaker', netUg: grams(1), reason: 'softer' }
    expect(unplannedRows(bench.state, initials)).toEqual([
      {
        ...row,
        entry: first?.id,
        component: `unplanned:${first?.id}`,
        asMade: expect.closeTo(1e6 / (16e6 + bench.step('a-water').netUg), 9),
      },
      {
        ...row,
        entry: second?.id,
        component: `unplanned:${second?.id}`,
        lot: 'SQ-115',
        struck: { reason: 'wrong number', atMs: bench.nowMs, by: 'RK' },
      },
    ])
  })

  test('names vessels and lots, and what it does not know by its id', () => {
    const { state } = benchWith({ kind: 'clean' })
    expect(['oil', 'pot'].map((id) => vesselName(state, id))).toEqual(['Oil beaker', 'pot'])
    const colour = { id: 'lot-colour', materialId: 'colour', code: 'CO-7', receivedUg: 1, status: 'released' } as const
    const codes = lotCodesOf(state, new Map([[colour.id, colour]]))
    expect([codes.get('lot-colour'), codes.get('lot-sq-115'), codes.get('none')]).toEqual(['CO-7', 'SQ-115', undefined])
  })
})
