import { describe, expect, test } from 'vitest'
import { type StepRow, stepRows } from '../../../../src/batch/record-steps.ts'
import type { StepKind } from '../../../../src/batch/step.ts'
import { grams, minutesMs, type TestBench } from '../../../support/batch.ts'
import { benchWith, own, runFor } from '../../../support/few-steps.ts'

const initials = (id: string): string => id.replace('person-', '').toUpperCase()

const rowOf = (bench: TestBench, id = own): StepRow | undefined =>
  stepRows(bench.state, initials).find(({ planned }) => planned.id === id)

/** A row without anything beside what is named. */
const row = (bench: TestBench, more: Partial<StepRow> = {}) => ({
  planned: bench.state.plan.byId.get(own),
  gates: [],
  readings: [],
  marks: [],
  ...more,
})

const hold: StepKind = { kind: 'hold', minutes: 20 }

describe('[E65] the row of a step', () => {
  test('is there before it has begun, without moments', () => {
    const bench = benchWith(hold)
    expect(rowOf(bench)).toEqual(row(bench))
  })

  test('has its start and its timer, and how long it ran once somebody stopped the bell', () => {
    const bench = benchWith(hold)
    const startedAtMs = bench.nowMs
    const timer = bench.timer(own, 20)
    expect(rowOf(bench)).toEqual(row(bench, { startedAtMs, by: 'RK', timer: { plannedMs: minutesMs(20) } }))
    bench.wait(23)
    bench.by = 'person-mo'
    bench.intend({ do: 'acknowledge-timer', timer })
    const stopped = { plannedMs: minutesMs(20), actualMs: minutesMs(23), lateMs: minutesMs(3) }
    expect(rowOf(bench)).toEqual(row(bench, { startedAtMs, by: 'RK', timer: stopped }))
    bench.wait(1)
    bench.finish(own)
    const finished = { atMs: bench.nowMs, how: 'done' } as const
    expect(rowOf(bench)).toEqual(row(bench, { startedAtMs, finished, by: 'MO', timer: stopped }))
  })

  test('has the tool with its speed and width, who checked, and what was seen', () => {
    const bench = benchWith({ kind: 'mix', tool: 'propeller', minutes: 20 })
    runFor(bench, 20)
    bench.intend({ do: 'finish-step', step: own, saw: 'even', toolRpm: 200, toolMm: 60, checkedBy: 'person-jt' })
    expect(rowOf(bench)).toMatchObject({ by: 'RK', checkedBy: 'JT', toolRpm: 200, toolMm: 60, readings: [], marks: [] })
    expect(rowOf(bench)?.finished).toEqual({ atMs: bench.nowMs, how: 'done', note: 'even' })
  })

  test('has no more of what was struck out', () => {
    const bench = benchWith(hold)
    const startedAtMs = bench.nowMs
    runFor(bench, 20)
    const [done] = bench.intend({ do: 'finish-step', step: own })
    bench.strike(done?.id ?? '')
    const timer = { plannedMs: minutesMs(20), actualMs: minutesMs(20), lateMs: 0 }
    expect(rowOf(bench)).toEqual(row(bench, { startedAtMs, by: 'RK', timer }))
  })

  test('has the gates that were passed, with their reasons, and those of no other step', () => {
    const bench = benchWith(hold)
    const atMs = bench.nowMs
    const [passed] = bench.intend({
      do: 'pass-gate',
      step: own,
      gate: 'TIMER_NOT_STARTED',
      detail: '20 min',
      reason: 'timed on the wall',
    })
    bench.pass('a-water', 'ORDER')
    const gate = { entry: passed?.id, atMs, by: 'RK', gate: 'TIMER_NOT_STARTED', detail: '20 min' }
    expect(rowOf(bench)?.gates).toEqual([{ ...gate, reason: 'timed on the wall' }])
    bench.strike(passed?.id ?? '')
    expect(rowOf(bench)?.gates).toEqual([])
  })

  test('of a weighing is there only where a gate was passed or it was left out', () => {
    const bench = benchWith(hold)
    expect(stepRows(bench.state, initials).map(({ planned }) => planned.id)).toEqual([own])
    bench.pass('a-water', 'ORDER')
    expect(stepRows(bench.state, initials).map(({ planned }) => planned.id)).toEqual(['a-water', own])
  })
})

describe('[E60] the row of a step that heats', () => {
  test('has what was read and what was changed from its beginning to its end', () => {
    const bench = benchWith({ kind: 'heat', targetC: 75 })
    const change = (what: string, vessel = 'main') => {
      bench.wait(1)
      bench.intend({ do: 'change-bath', vessel, what })
      return { atMs: bench.nowMs, what }
    }
    const read = (temperatureC: number) => {
      bench.wait(1)
      bench.read('main', temperatureC)
      return { atMs: bench.nowMs, temperatureC }
    }
    change('cold bath')
    const readings = [read(40)]
    const marks = [change('lid on')]
    change('ice', 'oil')
    readings.push(read(76))
    marks.push(change('lid off'))
    bench.finish(own)
    const finished = { atMs: bench.nowMs, how: 'done' } as const
    change('out of the bath')
    read(70)
    expect(rowOf(bench)).toEqual(row(bench, { readings, marks, finished, by: 'RK' }))
  })

  test('has what was changed from its start, where it was started before anything was read', () => {
    const bench = benchWith({ kind: 'heat', targetC: 75, holdMinutes: 20 })
    const startedAtMs = bench.nowMs
    runFor(bench, 20)
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'lid on' })
    expect(rowOf(bench)?.marks).toEqual([{ atMs: bench.nowMs, what: 'lid on' }])
    expect(rowOf(bench)?.startedAtMs).toBe(startedAtMs)
  })

  test('has no changes where it neither heats, cools nor holds', () => {
    const bench = benchWith({ kind: 'deaerate', by: 'stand', minutes: 20 })
    runFor(bench, 20)
    bench.read('main', 50)
    bench.intend({ do: 'change-bath', vessel: 'main', what: 'lid on' })
    expect(rowOf(bench)).toMatchObject({ readings: [], marks: [] })
  })
})

describe('[E65] the row of a step that empties a vessel', () => {
  test('has what stayed behind, what it was rinsed with, and both temperatures where they were read', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    bench.read('main', 76)
    bench.read('oil', 74)
    bench.combine(own, { residue: '0.4', rinse: '2' })
    const moved = { residueUg: grams('0.4'), rinseUg: grams('2'), fromC: 74, toC: 76 }
    const finished = { atMs: bench.nowMs, how: 'done' } as const
    expect(rowOf(bench)).toEqual(row(bench, { moved, finished, by: 'RK' }))
  })

  test('has no temperature that nobody read', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    bench.combine(own)
    expect(rowOf(bench)?.moved).toEqual({ residueUg: 0, rinseUg: 0 })
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(rowOf(bench)).toEqual(row(bench))
  })

  test('of a cup has none, read or not', () => {
    const bench = benchWith({ kind: 'charge', cup: 'oil', rate: 'stream' })
    bench.read('main', 76)
    bench.read('oil', 74)
    bench.charge(own, { residue: '0.1' })
    expect(rowOf(bench)?.moved).toEqual({ residueUg: grams('0.1'), rinseUg: 0 })
  })
})
