import { describe, expect, test } from 'vitest'
import { decide } from '../../../src/batch/decide'
import { extendBatch, tipFor } from '../../../src/batch/extend'
import { isDone, nextStep, statusOf } from '../../../src/batch/progress'
import { seal } from '../../../src/batch/seal'
import { shelfOf, summaryOf } from '../../../src/batch/summary-of'
import { grams, minutesMs, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader, withSteps } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const at = (stop?: string): TestBench => {
  const bench = openTestBench(lotionHeader())
  if (stop !== undefined) runUpTo(bench, stop)
  return bench
}

describe('timers', () => {
  test('[T1] a timer is an absolute deadline, which outlives sleep and reload', () => {
    const bench = at('a-hydrate')
    const startedAtMs = bench.nowMs
    const timer = bench.timer('a-hydrate', 20)
    expect(bench.state.timers.get(timer)).toMatchObject({ startedAtMs, deadlineAtMs: startedAtMs + minutesMs(20) })
    bench.wait(600)
    expect(summaryOf(bench.state).timers).toEqual([
      { id: timer, label: 'a-hydrate', deadlineAtMs: startedAtMs + minutesMs(20) },
    ])
  })

  test('[T2] how late a bell was stopped is recorded, and stopping twice records once', () => {
    const bench = at('a-hydrate')
    const timer = bench.timer('a-hydrate', 20)
    bench.wait(23)
    bench.intend({ do: 'acknowledge-timer', timer })
    expect(bench.state.timers.get(timer)?.acknowledged).toEqual({ atMs: bench.nowMs, lateMs: minutesMs(3) })
    expect(bench.intend({ do: 'acknowledge-timer', timer })).toEqual([])
    expect(bench.refusal({ do: 'acknowledge-timer', timer: 'none' }).code).toBe('NO_SUCH_TIMER')
    expect(summaryOf(bench.state).timers).toEqual([])
  })

  test('[T3] finishing before the time is over, or without starting it, wants a reason', () => {
    const bench = at('a-hydrate')
    expect(bench.gatesOn({ do: 'finish-step', step: 'a-hydrate' })).toEqual(['TIMER_NOT_STARTED'])
    bench.timer('a-hydrate', 20)
    bench.wait(19)
    expect(bench.refusal({ do: 'finish-step', step: 'a-hydrate' })).toMatchObject({
      gates: [{ code: 'TIMER_RUNNING', leftMs: minutesMs(1) }],
    })
    bench.pass('a-hydrate', 'TIMER_RUNNING')
    bench.finish('a-hydrate')
    expect(isDone(bench.state, 'a-hydrate')).toBe(true)
  })

  test('[T3] once the time is over nothing stands in the way', () => {
    const bench = at('a-hydrate')
    bench.timer('a-hydrate', 20)
    bench.wait(20)
    expect(bench.gates('a-hydrate', 'finish')).toEqual([])
  })

  test('[T4] a timer starts when its step can, not before, and runs a time that can be', () => {
    const bench = at('a-slurry-in')
    const timer = { do: 'start-timer', step: 'a-hydrate', label: 'x', minutes: 20 } as const
    expect(bench.gatesOn(timer)).toEqual(['ORDER'])
    for (const minutes of [0, -1, Number.NaN, 20_161])
      expect(bench.refusal({ ...timer, minutes }).code).toBe('MINUTES_BAD')
    expect(bench.refusal({ ...timer, step: 'nowhere' }).code).toBe('NO_SUCH_STEP')
    bench.intend({ do: 'start-timer', label: 'kettle', minutes: 4 })
    expect(bench.state.timers.size).toBe(1)
  })

  test('[T4] several run at once, and a step that only waits leaves the next one to the hands', () => {
    const bench = at('a-hydrate')
    bench.timer('a-hydrate', 20)
    expect(statusOf(bench.state, 'a-hydrate')).toBe('running')
    expect(nextStep(bench.state)?.id).toBe('b-triglyceride')
    const timer = bench.step('a-hydrate').timer ?? ''
    bench.wait(20)
    bench.intend({ do: 'acknowledge-timer', timer })
    expect(nextStep(bench.state)?.id).toBe('a-hydrate')
  })

  test('[T5] a clock that was moved is recorded and moves no deadline', () => {
    const bench = at('a-hydrate')
    const timer = bench.timer('a-hydrate', 20)
    const deadline = bench.state.timers.get(timer)?.deadlineAtMs
    bench.intend({ do: 'notice-clock', byMs: 3_600_000 })
    expect(bench.state.entries.at(-1)?.event.kind).toBe('clock-jumped')
    expect(bench.state.timers.get(timer)?.deadlineAtMs).toBe(deadline)
  })
})

describe('readings', () => {
  const ph = (value: number, more = {}) =>
    ({ do: 'measure', result: { property: 'pH', label: 'pH', value, ...more } }) as const

  test('[G7] a value that no instrument shows is asked about, with what was meant where that is plain', () => {
    const bench = at()
    expect(bench.refusal(ph(71))).toEqual({ code: 'VALUE_ABSURD', property: 'pH', value: 71, meant: 7.1 })
    expect(bench.refusal(ph(-1))).toEqual({ code: 'VALUE_ABSURD', property: 'pH', value: -1 })
    expect(bench.refusal(ph(Number.NaN)).code).toBe('VALUE_ABSURD')
    expect(bench.refusal(ph(5, { sampleC: 900 })).code).toBe('TEMPERATURE_ABSURD')
    expect(bench.refusal(ph(5, { sampleUg: -5 })).code).toBe('MASS_NOT_POSITIVE')
    for (const temperatureC of [-41, 251, Number.NaN, Number.POSITIVE_INFINITY])
      expect(bench.refusal({ do: 'read-temperature', vessel: 'main', temperatureC }).code).toBe('TEMPERATURE_ABSURD')
    expect(bench.refusal({ do: 'read-temperature', vessel: 'bucket', temperatureC: 20 }).code).toBe(
      'UNKNOWN_VESSEL_HERE',
    )
    const dense = { property: 'density', label: 'Density', value: 998 } as const
    expect(bench.refusal({ do: 'measure', result: dense }).code).toBe('VALUE_ABSURD')
  })

  test('[G7] a reading of no step is taken at any time, one of a step in its turn', () => {
    const bench = at()
    bench.intend(ph(6.2))
    expect(bench.state.measurements).toHaveLength(1)
    expect(bench.gatesOn(ph(5.1, { step: 'read-ph', check: 'ph-made-up' }))).toEqual(['ORDER'])
    expect(bench.refusal(ph(5.1, { step: 'nowhere' })).code).toBe('NO_SUCH_STEP')
  })

  test('[G7] a reading entered late keeps its own moment and a word of why', () => {
    const bench = at()
    const occurredAt = '2026-11-24T09:40:00.000+00:00'
    bench.intend({ ...ph(6.2), late: { occurredAt, reason: 'hands full' } })
    expect(bench.events.findLast((event) => event.kind === 'measured')).toMatchObject({ occurredAt })
    expect(bench.events.at(-1)).toMatchObject({ kind: 'noted', body: { text: 'pH entered late: hands full' } })
    expect(bench.refusal({ ...ph(6), late: { occurredAt, reason: '' } }).code).toBe('REASON_MISSING')
    for (const moment of ['yesterday', '2026-11-24T18:00:00Z'])
      expect(bench.refusal({ ...ph(6), late: { occurredAt: moment, reason: 'x' } }).code).toBe('MOMENT_BAD')
  })
})

describe('steps', () => {
  test('[G8] a step that a second person checks is finished with another person than who does it', () => {
    const checked = withSteps(lotionHeader(), (step) => (step.id === 'clean' ? { ...step, secondPerson: true } : step))
    const bench = openTestBench(checked)
    runUpTo(bench, 'clean')
    expect(bench.refusal({ do: 'finish-step', step: 'clean' }).code).toBe('SECOND_PERSON_MISSING')
    expect(bench.refusal({ do: 'finish-step', step: 'clean', checkedBy: 'person-rk' }).code).toBe('SAME_PERSON')
    bench.finish('clean', 'person-jt')
    expect(bench.events.at(-1)?.body).toMatchObject({ checkedBy: 'person-jt' })
  })

  test('[G8] a step is skipped with a reason, and what waited for it goes on', () => {
    const bench = at('a-hydrate')
    expect(bench.refusal({ do: 'skip-step', step: 'a-hydrate', reason: '' }).code).toBe('REASON_MISSING')
    bench.intend({ do: 'skip-step', step: 'a-hydrate', reason: 'pre-swollen gum' })
    expect(statusOf(bench.state, 'a-hydrate')).toBe('skipped')
    expect(statusOf(bench.state, 'a-oat')).toBe('open')
    expect(bench.refusal({ do: 'skip-step', step: 'a-hydrate', reason: 'x' }).code).toBe('STEP_DONE')
    expect(bench.refusal({ do: 'skip-step', step: 'nowhere', reason: 'x' }).code).toBe('NO_SUCH_STEP')
  })

  test('[E5] striking a skip opens the step again', () => {
    const bench = at('a-hydrate')
    bench.intend({ do: 'skip-step', step: 'a-hydrate', reason: 'slip' })
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(statusOf(bench.state, 'a-hydrate')).toBe('open')
  })
})

describe('the batch as a whole', () => {
  test('[G9] a parked batch takes notes and bells, no work, until it is taken up again', () => {
    const bench = at('a-hydrate')
    const timer = bench.timer('a-hydrate', 20)
    expect(bench.refusal({ do: 'park', reason: '' }).code).toBe('REASON_MISSING')
    bench.intend({ do: 'park', reason: 'overnight' })
    expect(bench.state.stage).toBe('parked')
    expect(shelfOf(summaryOf(bench.state))).toBe('in-hand')
    const weigh = { do: 'weigh', step: 'b-shea', reading: { mode: 're-tare', readingUg: grams(10) } } as const
    expect(bench.refusal(weigh).code).toBe('BATCH_PARKED')
    bench.wait(30)
    bench.intend({ do: 'acknowledge-timer', timer })
    bench.intend({ do: 'note', text: 'covered, in the fridge' })
    bench.intend({ do: 'resume' })
    expect(bench.intend({ do: 'resume' })).toEqual([])
    bench.weigh('b-shea', '10')
  })

  test('[G9] another person takes over in one act', () => {
    const bench = at()
    bench.intend({ do: 'hand-over', to: 'person-mo' })
    expect(bench.state.person).toBe('person-mo')
    expect(bench.refusal({ do: 'hand-over', to: 'person-mo' }).code).toBe('SAME_PERSON_ALREADY')
  })

  test('[G9] a batch is closed with a word where something is left, and takes only its follow-up afterwards', () => {
    const bench = at('rest')
    expect(bench.refusal({ do: 'close', decision: 'accept' }).code).toBe('REASON_MISSING')
    bench.intend({ do: 'close', decision: 'hold', note: 'rested checks to come' })
    expect(bench.state).toMatchObject({ stage: 'closed', decision: { decision: 'hold' } })
    expect(shelfOf(summaryOf(bench.state))).toBe('follow-up')
    const weigh = { do: 'weigh', step: 'a-water', reading: { mode: 're-tare', readingUg: 1 } } as const
    expect(bench.refusal(weigh)).toEqual({ code: 'BATCH_ENDED', stage: 'closed' })
    expect(bench.refusal({ do: 'park', reason: 'x' }).code).toBe('BATCH_ENDED')
    bench.wait(24 * 60)
    bench.measure({ step: 'ph-next-day', check: 'ph-rested', value: 5.1 })
    bench.measure({ check: 'viscosity', property: 'viscosity', label: 'Viscosity', value: 9000, unit: 'mPa·s' })
    bench.measure({ check: 'appearance', property: 'appearance', label: 'Appearance', text: 'even', good: true })
    bench.measure({ check: 'odour', property: 'odour', label: 'Odour', text: 'oats', good: true })
    expect(shelfOf(summaryOf(bench.state))).toBe('finished')
  })

  test('[G9] an open deviation is something left', () => {
    const bench = at()
    bench.weigh('b-emulsifier', '18.62')
    expect(bench.refusal({ do: 'close', decision: 'reject' }).code).toBe('REASON_MISSING')
    bench.intend({ do: 'abandon', reason: 'start again' })
    expect(bench.refusal({ do: 'resume' })).toEqual({ code: 'BATCH_ENDED', stage: 'abandoned' })
  })

  test('[E4] a batch with an unknown kind takes nothing, and says which', () => {
    const bench = at()
    const by = { stream: 'batch:one', replica: 'tablet', id: 'x', at: '2026-11-24T10:00:00Z', by: 'person-rk' }
    const state = extendBatch(bench.state, [seal({ kind: 'hummed', body: {} }, tipFor(bench.state, 'tablet'), by)])
    const context = { nowMs: bench.nowMs, by: 'person-rk', newId: () => 'y' }
    expect(decide(state, { do: 'note', text: 'hello' }, context)).toEqual({
      ok: false,
      refusal: { code: 'READ_ONLY', kinds: ['hummed'] },
    })
  })

  test('[P1] what cannot be planned is not opened, and nothing happens before it is', () => {
    const context = { nowMs: 0, by: 'person-rk', newId: () => 'y' }
    const header = { ...lotionHeader(), sizeUg: -1 }
    expect(decide(null, { do: 'open', header, preflight: [] }, context)).toMatchObject({
      refusal: { code: 'SIZE_BAD' },
    })
    expect(decide(null, { do: 'resume' }, context)).toEqual({ ok: false, refusal: { code: 'NO_BATCH' } })
  })

  test('instruments, pre-flight, bath and lots are kept as they were said', () => {
    const bench = at()
    const check = {
      kind: 'balance',
      id: 'balance-1',
      name: 'Balance 1',
      referenceUg: grams(20),
      readUg: grams(20),
    } as const
    bench.intend({ do: 'check-instrument', check, good: true })
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'ice bath' })
    expect(bench.state.instruments).toEqual([{ atMs: bench.nowMs, check, good: true }])
    expect(summaryOf(bench.state).balanceChecks).toEqual([{ balance: 'balance-1', atMs: bench.nowMs }])
    expect(bench.refusal({ do: 'tare', vessel: 'bucket', tareUg: 1 }).code).toBe('UNKNOWN_VESSEL_HERE')
    expect(bench.refusal({ do: 'note', text: ' ' }).code).toBe('REASON_MISSING')
  })
})
