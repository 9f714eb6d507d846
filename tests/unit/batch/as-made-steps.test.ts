import { describe, expect, test } from 'vitest'
import { madeOtherwise, minutesTaken, temperaturesOf } from '../../../src/batch/as-made'
import type { StepField } from '../../../src/batch/made-otherwise'
import { stepRows } from '../../../src/batch/record-steps'
import type { StepKind } from '../../../src/batch/step'
import { minutesMs, type TestBench } from '../../support/batch'
import { benchWith, own, passAll, runFor } from '../../support/few-steps'

/** What the own step did otherwise. */
const told = (bench: TestBench) => madeOtherwise(bench.state).filter(({ id }) => id.startsWith(own))

const other = (field: StepField, planned: number | undefined, made: number, beyond: boolean) => [
  {
    id: `own ${field}`,
    kind: 'step',
    step: own,
    title: 'Own',
    field,
    made,
    beyond,
    ...(planned === undefined ? {} : { planned }),
  },
]

/** Its timer ran for so long. */
function ran(kind: StepKind, minutes: number): TestBench {
  const bench = benchWith(kind)
  runFor(bench, minutes)
  passAll(bench)
  bench.finish(own)
  return bench
}

/** These temperatures were read of its vessel, a minute apart. */
function read(kind: StepKind, degrees: readonly number[]): TestBench {
  const bench = benchWith(kind)
  for (const temperatureC of degrees) {
    bench.wait(1)
    bench.read('main', temperatureC)
  }
  passAll(bench)
  bench.finish(own)
  return bench
}

describe('[F37] of a step as it was made', () => {
  test.each<StepKind>([
    { kind: 'hold', minutes: 20 },
    { kind: 'hydrate', minutes: 20, shear: 'low' },
    { kind: 'deaerate', by: 'stand', minutes: 20 },
    { kind: 'mix', tool: 'propeller', minutes: 20 },
  ])('minutes are told from one on, and lie beyond from a tenth on: $kind', (kind) => {
    expect(told(ran(kind, 20.4))).toEqual([])
    expect(told(ran(kind, 21))).toEqual(other('minutes', 20, 21, false))
    expect(told(ran(kind, 22))).toEqual(other('minutes', 20, 22, false))
    expect(told(ran(kind, 23))).toEqual(other('minutes', 20, 23, true))
    expect(told(ran(kind, 18))).toEqual(other('minutes', 20, 18, false))
    expect(told(ran(kind, 17))).toEqual(other('minutes', 20, 17, true))
  })

  test('of a short one two minutes lie beyond, one does not', () => {
    const hold = { kind: 'hold', minutes: 3 } as const
    expect(told(ran(hold, 4))).toEqual(other('minutes', 3, 4, false))
    expect(told(ran(hold, 5))).toEqual(other('minutes', 3, 5, true))
  })

  test('a speed is told where it left its range, and none is asked for where there is no range', () => {
    const stirred = (rpm: { min: number; max: number } | undefined, toolRpm?: number) => {
      const bench = benchWith({ kind: 'mix', tool: 'propeller', minutes: 20, ...(rpm ? { rpm } : {}) })
      runFor(bench, 20)
      if (toolRpm !== undefined) bench.pass(own, `SPEED_OUTSIDE:${toolRpm}`)
      bench.intend({ do: 'finish-step', step: own, ...(toolRpm === undefined ? {} : { toolRpm }) })
      return told(bench)
    }
    const range = { min: 150, max: 250 }
    for (const inside of [150, 200, 250, undefined]) expect(stirred(range, inside)).toEqual([])
    expect(stirred(range, 149)).toEqual(other('rpm', undefined, 149, true))
    expect(stirred(range, 251)).toEqual(other('rpm', undefined, 251, true))
    expect(stirred(undefined, 900)).toEqual([])
  })

  test('a rest is told from half an hour on; a shorter one lies beyond', () => {
    const rest = { kind: 'rest', hours: 24 } as const
    const rested = (hours: number) => told(ran(rest, hours * 60))
    expect(rested(24.4)).toEqual([])
    expect(rested(24.5)).toEqual(other('hours', 24, 24.5, false))
    expect(rested(23.6)).toEqual([])
    expect(rested(23.5)).toEqual(other('hours', 24, 23.5, true))
    expect(rested(48)).toEqual(other('hours', 24, 48, false))
  })

  test('a heating is told by its hottest reading; one that fell short lies beyond', () => {
    const heat = { kind: 'heat', targetC: 75 } as const
    expect(told(read(heat, [40, 75.9, 70]))).toEqual([])
    expect(told(read(heat, [40, 76, 70]))).toEqual(other('targetC', 75, 76, false))
    expect(told(read(heat, [40, 74.1]))).toEqual([])
    expect(told(read(heat, [40, 74]))).toEqual(other('targetC', 75, 74, true))
    expect(told(read(heat, []))).toEqual([])
  })

  test('what it was held for is told beside it, where it was to be held', () => {
    const heat = { kind: 'heat', targetC: 75, holdMinutes: 10 } as const
    const held = (kind: StepKind, minutes: number) => {
      const bench = benchWith(kind)
      bench.read('main', 75)
      runFor(bench, minutes)
      passAll(bench)
      bench.finish(own)
      return told(bench)
    }
    expect(held(heat, 10)).toEqual([])
    expect(held(heat, 11)).toEqual(other('holdMinutes', 10, 11, false))
    expect(held(heat, 12)).toEqual(other('holdMinutes', 10, 12, true))
    expect(held({ kind: 'heat', targetC: 75 }, 12)).toEqual([])
  })

  test('a cooling is told by its last reading; one that ended too hot lies beyond', () => {
    const cool = { kind: 'cool', targetC: 40, by: 'air' } as const
    expect(told(read(cool, [60, 40.9]))).toEqual([])
    expect(told(read(cool, [60, 41]))).toEqual(other('targetC', 40, 41, true))
    expect(told(read(cool, [30, 39]))).toEqual(other('targetC', 40, 39, false))
    expect(told(read(cool, []))).toEqual([])
  })

  test('two phases are told where they went together too far apart, or too cold', () => {
    const joined = (intoC: number | undefined, fromC: number | undefined, asked: object) => {
      const bench = benchWith({ kind: 'combine', from: 'oil', ...asked })
      if (intoC !== undefined) bench.read('main', intoC)
      if (fromC !== undefined) bench.read('oil', fromC)
      passAll(bench, 'begin')
      bench.combine(own)
      return told(bench)
    }
    const asked = { maxDifferenceC: 5, bothAtLeastC: 70 }
    expect(joined(75, 70, asked)).toEqual([])
    expect(joined(76, 70, asked)).toEqual(other('maxDifferenceC', 5, 6, true))
    expect(joined(70, 76, asked)).toEqual(other('maxDifferenceC', 5, 6, true))
    expect(joined(69, 72, asked)).toEqual(other('bothAtLeastC', 70, 69, true))
    expect(joined(60, 72, asked)).toEqual([
      ...other('maxDifferenceC', 5, 12, true),
      ...other('bothAtLeastC', 70, 60, true),
    ])
    expect(joined(20, 72, {})).toEqual([])
    expect(joined(undefined, 60, asked)).toEqual([])
    expect(joined(60, undefined, asked)).toEqual([])
  })

  test('one that was left out is told as that, one that is not finished not at all', () => {
    const bench = benchWith({ kind: 'hold', minutes: 20 })
    runFor(bench, 50)
    expect(told(bench)).toEqual([])
    bench.intend({ do: 'skip-step', step: own, reason: 'not needed' })
    expect(told(bench)).toEqual([{ id: own, kind: 'step-out', step: own, title: 'Own', beyond: true }])
  })

  test('its minutes are its timer’s, else from its start to its end, else unknown', () => {
    const step = { planned: undefined as never, readings: [], marks: [], gates: [] }
    const finished = { atMs: minutesMs(7.6), how: 'done' } as const
    expect(minutesTaken({ ...step, startedAtMs: minutesMs(1), finished })).toBe(7)
    expect(minutesTaken({ ...step, startedAtMs: 0, finished, timer: { plannedMs: 1, actualMs: minutesMs(3.4) } })).toBe(
      3,
    )
    expect(minutesTaken({ ...step, startedAtMs: 0, finished, timer: { plannedMs: 1 } })).toBe(8)
    expect(minutesTaken({ ...step, finished })).toBeNull()
    expect(minutesTaken({ ...step, startedAtMs: 0 })).toBeNull()
  })

  test('its temperatures are those read for it, else the last of its vessel before its end', () => {
    const bench = benchWith({ kind: 'deaerate', by: 'stand', minutes: 20 })
    bench.read('main', 50)
    bench.read('main', 45)
    runFor(bench, 20)
    bench.finish(own)
    bench.wait(1)
    bench.read('main', 30)
    const rowOf = (each: TestBench) => {
      const row = stepRows(each.state, (id) => id).find(({ planned }) => planned.id === own)
      if (row === undefined) throw new Error('no row')
      return row
    }
    expect(temperaturesOf(bench.state, rowOf(bench))).toEqual([45])
    const hot = read({ kind: 'heat', targetC: 75 }, [40, 60, 75])
    expect(temperaturesOf(hot.state, rowOf(hot))).toEqual([40, 60, 75])
  })
})
