import { describe, expect, test } from 'vitest'
import type { Lot } from '../../../src/batch/catalogue'
import { remediesFor } from '../../../src/batch/deviation'
import { isDone, statusOf, targetOf } from '../../../src/batch/progress'
import { recordOf } from '../../../src/batch/record'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader, withLots } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const panthenol = 'panthenol-75'
const tocopherol = 'tocopherol'

/** Another lot of a line, which the batch does not know yet. */
function otherLot(bench: TestBench, line: string, more: Partial<Lot>): Lot {
  const [own] = bench.state.plan.lines.get(line)?.lots ?? []
  if (!own) throw new Error(`no lot of ${line}`)
  return { ...own, id: 'other-lot', code: 'XX-001', ...more }
}

function correct(bench: TestBench, entry: string, lot: Lot): void {
  bench.intend({ do: 'correct-lot', entry, lot: lot.id, opened: lot, reason: 'the wrong tub' })
}

/** The cool-down weighed; panthenol by a lot of 75 %. */
function weighed(): TestBench {
  const header = withLots(lotionHeader(), panthenol, ([lot]) => (lot ? [{ ...lot, assay: 0.75 }] : []))
  const bench = openTestBench(header)
  runUpTo(bench, 'c-panthenol')
  return bench
}

describe('the wrong lot', () => {
  test('[R46] a weaker lot makes the weighing count for less: the rest is asked for', () => {
    const bench = weighed()
    const entry = bench.weigh('c-panthenol', '6.65')
    expect(isDone(bench.state, 'c-panthenol')).toBe(true)
    const before = bench.massIn('cool-cup')
    correct(bench, entry, otherLot(bench, panthenol, { assay: 0.6 }))
    expect(bench.massIn('cool-cup')).toBe(before)
    expect(bench.step('c-panthenol').countedUg).toBe(grams('5.32'))
    expect(statusOf(bench.state, 'c-panthenol')).toBe('part')
  })

  test('[R46] a stronger lot may be too much: a deviation as any other, with its ways on', () => {
    const bench = weighed()
    const entry = bench.weigh('c-panthenol', '6.65')
    bench.weigh('c-preservative', '5')
    bench.weigh('c-tocopherol', '1.5')
    bench.charge('c-in')
    correct(bench, entry, otherLot(bench, panthenol, { assay: 0.9 }))
    expect(bench.deviation()).toMatchObject({ direction: 'over', byUg: grams('1.33'), line: panthenol })
    expect(remediesFor(bench.state, bench.deviation().id)[0]).toMatchObject({ feasible: true, breaks: 0 })
    bench.settle('accept')
    expect(targetOf(bench.state, 'c-panthenol')).toBe(grams('6.65'))
  })

  test('[R46] a lot that had expired or was not released is left with a reason, or its vessel started again', () => {
    for (const more of [{ expires: '2026-11-01' }, { status: 'quarantine' }] as const) {
      const bench = openTestBench(lotionHeader())
      runUpTo(bench, 'b-squalane')
      const entry = bench.weigh('b-squalane', '15')
      correct(bench, entry, otherLot(bench, 'squalane', more))
      expect(bench.deviation()).toMatchObject({ cause: 'lot', line: 'squalane', byUg: grams(15) })
      const offers = remediesFor(bench.state, bench.deviation().id)
      expect(offers.map(({ remedy }) => remedy)).toEqual(['discard', 'accept'])
      bench.settle('accept')
      expect(bench.state.totalUg).toBe(grams(500))
      expect(isDone(bench.state, 'b-squalane')).toBe(true)
    }
  })

  test('[R46] mending an over-weighing leaves a barred lot to be decided on', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-squalane')
    const entry = bench.weigh('b-squalane', '15')
    bench.weigh('b-emulsifier', '18.62')
    const over = bench.deviation().id
    correct(bench, entry, otherLot(bench, 'squalane', { status: 'quarantine' }))
    bench.intend({ do: 'settle', deviation: over, remedy: 'extra', reason: 'a scoop too many' })
    expect(bench.deviation()).toMatchObject({ cause: 'lot' })
  })

  test('[R46] stock goes to the lot it came from, the record tells both, and a strike brings the first back', () => {
    const bench = weighed()
    const entry = bench.weigh('c-tocopherol', '1.5')
    const [own] = bench.state.plan.lines.get(tocopherol)?.lots ?? []
    correct(bench, entry, otherLot(bench, tocopherol, {}))
    expect(bench.state.usedByLot.get('other-lot')).toBe(grams('1.5'))
    expect(bench.state.usedByLot.get(own?.id ?? '')).toBe(0)
    const row = recordOf(bench.state).materials.find(({ line }) => line === tocopherol)
    expect(row?.weighings.at(-1)).toMatchObject({ lot: 'XX-001', lotWas: own?.code })
    const correction = bench.state.entries.findLast(({ event }) => event.kind === 'lot-corrected')
    bench.strike(correction?.event.id ?? '')
    expect(bench.state.usedByLot.get(own?.id ?? '')).toBe(grams('1.5'))
    expect(bench.state.usedByLot.get('other-lot') ?? 0).toBe(0)
  })

  test('[R46] too little of a line whose step has passed is missing for good', () => {
    const header = withLots(lotionHeader(), 'colloidal-oat', ([lot]) => (lot ? [{ ...lot, assay: 1 }] : []))
    const revision = {
      ...header.revision,
      phases: header.revision.phases.map((phase) => ({
        ...phase,
        lines: phase.lines.map((line) => (line.id === 'colloidal-oat' ? { ...line, assayAssumed: 1 } : line)),
      })),
    }
    const bench = openTestBench({ ...header, revision })
    runUpTo(bench, 'b-triglyceride')
    const entry = bench.step('a-oat').weighings.at(-1)?.id ?? ''
    correct(bench, entry, otherLot(bench, 'colloidal-oat', { assay: 0.8 }))
    expect(bench.deviation()).toMatchObject({ cause: 'forgotten', direction: 'under', byUg: grams(1) })
  })

  test('[R46] another material, the same lot again, an entry that is not there and no reason are refused', () => {
    const bench = openTestBench(lotionHeader())
    const entry = bench.weigh('b-squalane', '15')
    const lot = otherLot(bench, 'squalane', {})
    const ask = { do: 'correct-lot', entry, lot: lot.id, opened: lot, reason: 'x' } as const
    expect(bench.refusal({ ...ask, opened: { ...lot, materialId: 'shea-butter' } }).code).toBe('OTHER_MATERIAL')
    expect(bench.refusal({ ...ask, entry: 'none' }).code).toBe('NO_SUCH_ENTRY')
    expect(bench.refusal({ ...ask, reason: ' ' }).code).toBe('REASON_MISSING')
    const { lot: own = '' } = bench.step('b-squalane').weighings[0]?.body ?? {}
    expect(bench.refusal({ do: 'correct-lot', entry, lot: own, reason: 'x' }).code).toBe('NO_SUCH_ENTRY')
  })
})
