import { describe, expect, test } from 'vitest'
import { recordOf } from '../../../../src/batch/record.ts'
import { findingsOf } from '../../../../src/batch/record-review.ts'
import { timerRows } from '../../../../src/batch/record-timers.ts'
import { minutesMs, openTestBench } from '../../../support/batch.ts'
import { benchWith, own, runFor } from '../../../support/few-steps.ts'
import { lotionHeader, withLots } from '../../../support/formulas.ts'

const hold = { kind: 'hold', minutes: 20 } as const

describe('[E72] a reviewer is led to', () => {
  test.each([
    [18.9, true],
    [19, true],
    [19.1, false],
    [20, false],
    [24.9, false],
    [25, true],
  ])('a clock of 20 min that was stopped after %d min: %s', (minutes, isTold) => {
    const bench = benchWith(hold)
    runFor(bench, minutes)
    const record = recordOf(bench.state)
    const [timer] = record.timers
    const told = findingsOf(record).filter(({ kind }) => kind === 'timer')
    expect(told).toEqual(isTold ? [{ kind: 'timer', timer, at: `entry-${timer?.entry}` }] : [])
  })

  test('no clock that still runs', () => {
    const bench = benchWith(hold)
    bench.timer(own, 20)
    expect(findingsOf(recordOf(bench.state)).filter(({ kind }) => kind === 'timer')).toEqual([])
  })

  test('a lot past the day on which it was to be tested again, or that nobody released, where it was used', () => {
    const found = (more: object, use = true) => {
      const header = withLots(lotionHeader(), 'squalane', (lots) => lots.map((lot) => ({ ...lot, ...more })))
      const kept = ['LOT_EXPIRED', 'LOT_QUARANTINED'].map((code) => ({ code, about: 'squalane', reason: 'tested' }))
      const bench = openTestBench({ ...header, kept })
      if (use) bench.weigh('b-squalane', '15')
      return findingsOf(recordOf(bench.state)).flatMap((each) => (each.kind === 'lot' ? [each.why] : []))
    }
    expect(found({ retestOn: '2026-11-24' })).toEqual([])
    expect(found({ retestOn: '2026-11-23' })).toEqual(['to be tested again'])
    expect(found({ retestOn: '2026-11-23', status: 'quarantine' })).toEqual(['in quarantine'])
    expect(found({ expires: '2026-11-23', retestOn: '2026-11-23', status: 'quarantine' })).toEqual(['expired'])
    expect(found({ expires: '2026-11-24' })).toEqual([])
    expect(found({ retestOn: '2026-11-23' }, false)).toEqual([])
  })
})

describe('[E72] before all else a reviewer sees', () => {
  test('a broken trail, unfit signatures, unknown kinds and doubts, each with its place', () => {
    const record = recordOf(benchWith(hold).state)
    const verification = {
      intact: false,
      entries: 9,
      head: 'h',
      brokenAt: 4,
      why: 'CHANGED',
      kind: 'weighed',
    } as const
    const signed = { head: 'h', key: 'k', publicKey: 'spki', signature: 'rs' }
    const row = { entry: 'e', stream: 'batch:b', signed, covers: null, after: { entries: 0, strikes: 0 } }
    expect(findingsOf(record)).toEqual([])
    expect(findingsOf({ ...record, verification, unknownKinds: ['sung-over'] }, [row])).toEqual([
      { kind: 'chain', verification, at: 'verification' },
      { kind: 'device', row, at: 'verification' },
      { kind: 'unknown', kinds: ['sung-over'], at: 'trail' },
    ])
  })
})

describe('[E68] the row of a clock', () => {
  test('has what was set, how long it ran and by how much it was late; a struck one has none', () => {
    const bench = benchWith(hold)
    const atMs = bench.nowMs
    bench.timer(own, 20)
    const row = { atMs, by: 'person-rk', label: own, step: own, plannedMs: minutesMs(20), entry: expect.any(String) }
    expect(timerRows(bench.state, (id) => id)).toEqual([row])
    bench.wait(23)
    bench.intend({ do: 'acknowledge-timer', timer: bench.step(own).timer ?? '' })
    const rows = timerRows(bench.state, (id) => id)
    expect(rows).toEqual([{ ...row, actualMs: minutesMs(23), lateMs: minutesMs(3) }])
    bench.intend({ do: 'start-timer', label: 'Tea', minutes: 4 })
    expect(timerRows(bench.state, (id) => id)[1]).toEqual({
      atMs: bench.nowMs,
      by: 'person-rk',
      label: 'Tea',
      plannedMs: minutesMs(4),
      entry: expect.any(String),
    })
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(timerRows(bench.state, (id) => id)).toEqual(rows)
  })
})
