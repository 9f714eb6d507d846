import { describe, expect, test } from 'vitest'
import type { Event } from '../../../src/batch/event'
import { extendBatch, tipFor } from '../../../src/batch/extend'
import { foldBatch } from '../../../src/batch/fold'
import { isDone, statusOf } from '../../../src/batch/progress'
import { seal } from '../../../src/batch/seal'
import { summaryOf } from '../../../src/batch/summary-of'
import { advance, tipOf } from '../../../src/batch/tip'
import { addedInAll } from '../../../src/trade/ledger'
import { forkOf, grams, openTestBench, plain, type TestBench } from '../../support/batch'
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

describe('the fold', () => {
  test('[E3] extending entry by entry gives what folding the whole log gives', () => {
    const bench = open()
    bench.weigh('b-shea', '99.8')
    bench.settle('accept')
    bench.strike(bench.state.entries.find((entry) => entry.event.kind === 'weighed')?.event.id ?? '')
    runUpTo(bench)
    expect(plain(bench.state)).toEqual(plain(foldBatch(bench.events)))
  })

  test('[E3] extending leaves the older state as it was, to the last detail', () => {
    const bench = open()
    for (const stop of ['a-hydrate', 'b-into-a', 'adjust-ph', 'fill']) {
      runUpTo(bench, stop)
      const before = bench.state
      const kept = structuredClone(plain(before))
      runUpTo(bench, bench.state.plan.steps[(bench.state.plan.byId.get(stop)?.index ?? 0) + 1]?.id)
      expect(bench.state).not.toBe(before)
      expect(plain(before)).toEqual(kept)
    }
  })

  test('[E3] where a replica writes next follows from the state as from the log', () => {
    const bench = open()
    bench.weigh('a-water', '348.85')
    for (const replica of ['tablet', 'second'])
      expect(tipFor(bench.state, replica)).toEqual(tipOf(bench.events, replica))
  })

  test('[E4] an unknown kind keeps the batch readable and makes it read-only', () => {
    const bench = open()
    bench.weigh('a-water', '348.85')
    const strange = elsewhere(bench, bench.events.length, { kind: 'photographed-in-3d', body: { cloud: [1, 2] } })
    const state = extendBatch(bench.state, [strange])
    expect(state.entries.at(-1)?.event).toBe(strange)
    expect([...state.unknownKinds]).toEqual(['photographed-in-3d'])
    expect(isDone(state, 'a-water')).toBe(true)
    expect(summaryOf(state).done).toBe(1)
  })

  test('[E4] a newer version of a known kind is kept and not misread', () => {
    const bench = open()
    const newer = { ...elsewhere(bench, 1, { kind: 'weighed', body: { grains: 12 } }), v: 2 }
    const state = extendBatch(bench.state, [newer])
    expect([...state.unknownKinds]).toEqual(['weighed'])
    expect(state.doubts).toEqual([])
    expect(addedInAll(state.ledger)).toBe(0)
  })

  test('[R50] after a merge the same two weighings are asked about once, however the step goes on', () => {
    const bench = open()
    bench.weigh('a-phytate', '0.3')
    const [, first] = bench.events
    const twice = elsewhere(bench, 1, { kind: 'weighed', body: { ...(first?.body as object) } })
    const merged = forkOf([...bench.events, twice], 'second')
    merged.weigh('a-phytate', '0.2')
    merged.weigh('a-phytate', '0.1')
    expect(merged.state.doubts.map(({ code }) => code)).toEqual(['WEIGHED_TWICE'])
    const home = forkOf(merged.events, 'tablet')
    home.weigh('a-phytate', '0.1')
    expect(home.state.doubts).toHaveLength(1)
    expect(home.step('a-phytate').countedUg).toBe(grams(1))
  })

  test('[R50] folding a forked log looks at its entries as often as it is long', () => {
    const looksAt = (count: number): number => {
      const bench = open()
      bench.weigh('a-water', '0.5')
      const other = forkOf(bench.events.slice(0, 1), 'second')
      for (let times = 0; times < count; times += 1) other.weigh('a-water', '0.1')
      let looks = 0
      const counted = [...bench.events, ...other.events.slice(1)].map((event) =>
        Object.defineProperty({ ...event }, 'hash', {
          get: () => {
            looks += 1
            return event.hash
          },
        }),
      )
      expect(foldBatch(counted).doubts).toHaveLength(1)
      return looks
    }
    expect(looksAt(400)).toBeLessThan(5 * looksAt(100))
  })

  test('[E2] two weighings of one step both count, and a person is asked to look', () => {
    const bench = open()
    const weighed = bench.weigh('a-phytate', '1')
    const [, other] = bench.events
    const twice = elsewhere(bench, 1, { kind: 'weighed', body: { ...(other?.body as object) } })
    const state = extendBatch(bench.state, [twice])
    expect(state.doubts).toEqual([{ code: 'WEIGHED_TWICE', step: 'a-phytate', entries: [twice.id, weighed] }])
    expect(addedInAll(state.ledger)).toBe(grams(2))
    expect(plain(foldBatch([...bench.events, twice].reverse()))).toEqual(plain(state))
    // Nobody noticed that it is over, as neither page knew; it waits for a way on all the same.
    expect(statusOf(state, 'a-phytate')).toBe('over')
    expect(summaryOf(state).openDeviations).toBe(1)
  })

  test('[E2] a remedy that did not know of a weighing and asks for less leaves it over, with a way on to choose', () => {
    const bench = open()
    bench.weigh('b-emulsifier', '18.62')
    const seen = bench.events.length
    const { id: deviation } = bench.deviation()
    bench.weigh('b-cetearyl', '12.5')
    const target = { step: 'b-cetearyl', line: 'cetearyl-alcohol', fromUg: grams('12.5'), toUg: grams(6) }
    const figures = { totalUg: grams(500), heldBackUg: grams(10), targets: [target] }
    const body = { deviation, remedy: 'departure', reason: 'elsewhere', ...figures }
    const later = elsewhere(bench, seen, { kind: 'remedy-chosen', body }, 'zinc')
    const state = foldBatch([...bench.events, later])
    expect(statusOf(state, 'b-cetearyl')).toBe('over')
    const waiting = [...state.deviations.values()].filter((each) => !each.settled)
    expect(waiting).toMatchObject([{ step: 'b-cetearyl', direction: 'over', byUg: grams('6.5') }])
  })

  test('[E2] weighings of different steps on two pages raise no doubt', () => {
    const bench = open()
    bench.weigh('a-water', '348.85')
    const body = { step: 'b-shea', line: 'shea-butter', vessel: 'oil', netUg: grams(10), mode: 're-tare', readings: [] }
    const state = extendBatch(bench.state, [elsewhere(bench, 1, { kind: 'weighed', body })])
    expect(state.forked).toBe(true)
    expect(state.doubts).toEqual([])
    expect(isDone(state, 'a-water') && isDone(state, 'b-shea')).toBe(true)
  })

  test('[E2] in a forked batch, a weighing that knows of the one before it raises no doubt', () => {
    const bench = open()
    bench.weigh('b-triglyceride', '20')
    bench.weigh('b-triglyceride', '15')
    const state = extendBatch(bench.state, [elsewhere(bench, 1, { kind: 'noted', body: { text: 'lid on' } })])
    expect(state.forked).toBe(true)
    expect(state.doubts).toEqual([])
  })

  test('[E2] one after the other on two pages is no fork', () => {
    const bench = open()
    bench.weigh('b-triglyceride', '20')
    const body = { ...(bench.events.at(-1)?.body as object), netUg: grams(15) }
    const state = extendBatch(bench.state, [elsewhere(bench, bench.events.length, { kind: 'weighed', body })])
    expect(state.forked).toBe(false)
    expect(state.doubts).toEqual([])
    expect(isDone(state, 'b-triglyceride')).toBe(true)
  })

  test('[E2] a late entry takes its place, wherever it arrives', () => {
    const bench = open()
    runUpTo(bench, 'a-hydrate')
    const late = elsewhere(bench, 1, { kind: 'noted', body: { text: 'lid on' } })
    const state = extendBatch(bench.state, [late])
    expect(state.entries[1]?.event.id).toBe(late.id)
    expect(plain(state)).toEqual(plain(foldBatch([late, ...bench.events])))
  })

  test('a log without its opening entry is a mistake of ours, and throws', () => {
    const bench = open()
    bench.weigh('a-water', '348.85')
    expect(() => foldBatch(bench.events.slice(1))).toThrow('opening entry')
    expect(advance(tipOf([], 'x'), bench.events[0] as Event).next).toBe(1)
  })
})
