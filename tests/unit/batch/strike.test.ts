import { describe, expect, test } from 'vitest'
import type { Event } from '../../../src/batch/event'
import { extendBatch } from '../../../src/batch/extend'
import { isDone, statusOf } from '../../../src/batch/progress'
import { seal } from '../../../src/batch/seal'
import { summaryOf } from '../../../src/batch/summary-of'
import { tipOf } from '../../../src/batch/tip'
import { addedInAll } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { grams, openTestBench, plain, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const open = (): TestBench => openTestBench(lotionHeader())

/** What `replica` writes after the first `count` entries, without knowing the later ones. */
function elsewhere(bench: TestBench, count: number, draft: { kind: string; body: unknown }, replica = 'second'): Event {
  const seen = bench.events.slice(0, count)
  const at = '2026-11-24T10:30:00.000+00:00'
  const tip = tipOf(seen, replica)
  return seal(draft, tip, { stream: 'batch:one', replica, id: `${replica}-${count}`, at, by: 'person-mo' })
}

describe('striking out', () => {
  test('[E5] a mistyped entry stays legible, with who, when and why, and counts for nothing', () => {
    const bench = open()
    const mistyped = bench.weigh('b-shea', '99.8')
    bench.wait(2)
    bench.strike(mistyped)
    const entry = bench.state.entries.find((each) => each.event.id === mistyped)
    expect(entry?.struck).toMatchObject({ reason: 'wrong number', by: 'person-rk', atMs: bench.nowMs })
    expect(addedInAll(bench.state.ledger)).toBe(0)
    expect(bench.state.usedByLot.get('lot-sb-056')).toBeUndefined()
    expect(statusOf(bench.state, 'b-shea')).toBe('open')
    expect([...bench.state.deviations.values()]).toMatchObject([{ settled: { how: 'struck out' } }])
    bench.weigh('b-shea', '9.98')
    expect(isDone(bench.state, 'b-shea')).toBe(true)
    expect(bench.state.doubts).toEqual([])
  })

  test('[E5] what no longer adds up after a strike shows as a doubt, and nothing is thrown', () => {
    const bench = open()
    const water = bench.weigh('a-water', '348.85')
    bench.intend({ do: 'spill', vessel: 'main', massUg: grams(40), reason: 'knocked over' })
    const spill = bench.events.find(({ kind }) => kind === 'spilled')?.id
    bench.strike(water)
    expect(bench.state.doubts).toEqual([{ code: 'DOES_NOT_ADD_UP', entry: spill, why: 'MORE_THAN_HELD' }])
    expect(addedInAll(bench.state.ledger)).toBe(heldInAll(bench.state.ledger))
    bench.weigh('a-water', '348.85')
    bench.strike(spill ?? '')
    expect(bench.state.doubts).toEqual([])
  })

  test('[E5] striking a remedy restores the earlier targets, total and held-back water', () => {
    const bench = open()
    bench.weigh('b-emulsifier', '18.62')
    const before = plain(bench.state.steps)
    const { totalUg, heldBackUg } = bench.state
    bench.settle('scale')
    expect(bench.state.totalUg).toBe(grams(532))
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(plain(bench.state.steps)).toEqual(before)
    expect(bench.state).toMatchObject({ totalUg, heldBackUg, totalWas: [] })
    expect(bench.deviation().byUg).toBe(grams('1.12'))
  })

  test('[E5] a line weighed to a target that a struck remedy had raised is over again, and has a way on', () => {
    const bench = open()
    bench.weigh('b-emulsifier', '18.62')
    bench.settle('scale')
    const remedy = bench.events.at(-1)?.id ?? ''
    bench.weigh('b-shea', '10.64')
    expect(isDone(bench.state, 'b-shea')).toBe(true)
    bench.strike(remedy)
    bench.settle('accept')
    expect(statusOf(bench.state, 'b-shea')).toBe('over')
    bench.settle('accept')
    expect(isDone(bench.state, 'b-shea')).toBe(true)
    expect(bench.state.doubts).toEqual([])
  })

  test('[E5] striking the first of two weighings takes the deviation of the second away', () => {
    const bench = open()
    const first = bench.weigh('b-triglyceride', '20')
    bench.weigh('b-triglyceride', '34.9')
    expect(statusOf(bench.state, 'b-triglyceride')).toBe('over')
    bench.strike(first)
    expect(isDone(bench.state, 'b-triglyceride')).toBe(true)
    expect([...bench.state.deviations.values()]).toMatchObject([{ settled: { how: 'struck out' } }])
  })

  test('[E5] taking back the word that left a line short lets it be weighed on', () => {
    const bench = open()
    bench.weigh('b-triglyceride', '30')
    bench.intend({ do: 'leave-short', step: 'b-triglyceride', reason: 'bottle empty' })
    expect(bench.state.totalUg).toBe(grams(495))
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(bench.state.totalUg).toBe(grams(500))
    expect(statusOf(bench.state, 'b-triglyceride')).toBe('part')
    bench.weigh('b-triglyceride', '5')
    expect(isDone(bench.state, 'b-triglyceride')).toBe(true)
    expect(summaryOf(bench.state).openDeviations).toBe(0)
  })

  test('[E5] striking the weighing behind a remedy leaves the remedy in sight, as a doubt', () => {
    const bench = open()
    const over = bench.weigh('b-emulsifier', '18.62')
    bench.settle('scale')
    const remedy = bench.events.at(-1)?.id
    bench.strike(over)
    expect(bench.state.doubts).toEqual([{ code: 'DOES_NOT_ADD_UP', entry: remedy, why: 'REMEDY_FOR_STRUCK_ENTRY' }])
    expect(bench.state.totalUg).toBe(grams(532))
    bench.strike(remedy ?? '')
    expect(bench.state.doubts).toEqual([])
    expect(bench.state.totalUg).toBe(grams(500))
  })

  test.each(['opened', 'struck', 'deviation-noticed'])(
    '[E5] a strike of "%s" is refused, and does nothing where it arrives',
    (kind) => {
      const bench = open()
      bench.strike(bench.weigh('b-emulsifier', '18.62'))
      const entry = bench.events.find((event) => event.kind === kind)?.id ?? ''
      expect(bench.refusal({ do: 'strike', entry, reason: 'no' })).toEqual({ code: 'CANNOT_BE_STRUCK', kind })
      const forced = elsewhere(bench, bench.events.length, { kind: 'struck', body: { entry, reason: 'no' } })
      const state = extendBatch(bench.state, [forced])
      expect(state.entries.find((each) => each.event.id === entry)?.struck).toBeUndefined()
      expect(plain(state.ledger)).toEqual(plain(bench.state.ledger))
    },
  )

  test('[E5] a strike needs an entry that is there, not struck yet, and a reason', () => {
    const bench = open()
    const entry = bench.weigh('a-water', '348.85')
    expect(bench.refusal({ do: 'strike', entry: 'nowhere', reason: 'x' }).code).toBe('NO_SUCH_ENTRY')
    expect(bench.refusal({ do: 'strike', entry, reason: ' ' }).code).toBe('REASON_MISSING')
    bench.strike(entry)
    expect(bench.refusal({ do: 'strike', entry, reason: 'x' }).code).toBe('STRUCK_ALREADY')
    const stray = elsewhere(bench, bench.events.length, { kind: 'struck', body: { entry: 'gone', reason: 'x' } })
    expect(extendBatch(bench.state, [stray]).doubts).toEqual([{ code: 'STRUCK_UNKNOWN', entry: stray.id }])
  })

  test('[E5] striking a charge puts the contents back into their cup, and later weighings stay', () => {
    const bench = open()
    runUpTo(bench, 'a-hydrate')
    const charge = bench.events.findLast((event) => event.kind === 'charged')?.id ?? ''
    bench.strike(charge)
    expect(bench.massIn('slurry')).toBe(grams(22))
    expect(statusOf(bench.state, 'a-slurry-in')).toBe('open')
    bench.charge('a-slurry-in', { residue: '0.05', rinse: '4' })
    expect(bench.massIn('slurry')).toBe(0)
    expect(bench.state.doubts).toEqual([])
  })
})
