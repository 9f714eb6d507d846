import { describe, expect, test } from 'vitest'
import { commonStep } from '../../../src/batch/entry-phrases'
import type { Bodies } from '../../../src/batch/kinds'
import { recordOf } from '../../../src/batch/record'
import { howWords } from '../../../src/batch/result-words'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { summaryOf } from '../../../src/batch/summary-of'
import { openTestBench } from '../../support/batch'
import { formulas, headerFor } from '../../support/formulas'
import { runUpTo } from '../../support/run'

type Result = Bodies['measured']

function rested() {
  const bench = openTestBench(headerFor(formulas.lotion))
  runUpTo(bench)
  bench.intend({ do: 'close', decision: 'hold' })
  bench.wait(24 * 60)
  return bench
}

const viscosity: Result = {
  check: 'viscosity',
  property: 'viscosity',
  label: 'Viscosity, rested',
  unit: 'mPa·s',
  readings: [11_300, 11_500, 11_700],
  sampleC: 25,
  how: { spindle: '4', rpm: 12, torquePercent: 8 },
}
const ph: Result = { check: 'ph-rested', property: 'pH', label: 'pH, rested', value: 5.1, sampleC: 25 }
const say = { mass: (massUg: number) => `${massUg / commonStep(massUg)}`, number: String }

describe('results after the rest', () => {
  test('[K1] a pass is written whole, or nothing of it', () => {
    const bench = rested()
    const before = bench.events.length
    expect(bench.refusal({ do: 'measure-all', results: [ph, { ...viscosity, readings: [1, -5] }] }).code).toBe(
      'VALUE_ABSURD',
    )
    expect(bench.events.length).toBe(before)
    expect(bench.refusal({ do: 'measure-all', results: [] }).code).toBe('NOTHING_READ')
    const written = bench.intend({ do: 'measure-all', results: [ph, viscosity] })
    expect(written.map(({ kind }) => kind)).toEqual(['measured', 'measured'])
    expect(written.map(faultInBody).filter((fault) => fault !== null)).toEqual([])
  })

  test('[K1] a pass entered late keeps its moment on every result, and one reason', () => {
    const bench = rested()
    const late = { occurredAt: '2026-11-25T11:00:00.000+01:00', reason: 'on paper first' }
    const written = bench.intend({ do: 'measure-all', results: [ph, viscosity], late })
    expect(written.map(({ occurredAt }) => occurredAt)).toEqual([late.occurredAt, late.occurredAt, undefined])
    expect(written[2]?.body).toEqual({ text: 'pH, rested, Viscosity, rested entered late: on paper first' })
    expect(bench.refusal({ do: 'measure-all', results: [ph], late: { ...late, reason: ' ' } }).code).toBe(
      'REASON_MISSING',
    )
  })

  test('[K2] a figure without its unit is refused, a pH and a step of a scale need none', () => {
    const bench = rested()
    const density: Result = { property: 'density', label: 'Density', value: 0.998 }
    expect(bench.refusal({ do: 'measure', result: density })).toEqual({ code: 'UNIT_MISSING', label: 'Density' })
    expect(bench.refusal({ do: 'measure', result: { ...density, unit: ' ' } }).code).toBe('UNIT_MISSING')
    bench.intend({ do: 'measure', result: { ...density, unit: 'g/mL' } })
    bench.intend({ do: 'measure', result: ph })
    bench.intend({ do: 'measure', result: { property: 'feel', label: 'Skin feel', value: 7 } })
    expect(bench.state.measurements.slice(-3).map(({ body }) => body.value)).toEqual([0.998, 5.1, 7])
  })

  test('[K3] every reading is kept, and the mean counts whatever was said to be it', () => {
    const bench = rested()
    bench.intend({ do: 'measure-all', results: [{ ...viscosity, value: 1 }] })
    const row = recordOf(bench.state).results.rested.at(-1)
    expect(row?.body.value).toBe(11_500)
    expect(row?.body.readings).toEqual([11_300, 11_500, 11_700])
    expect(howWords(row?.body ?? {}, say)[0]).toBe('3 readings: 11300; 11500; 11700; s 200')
  })

  test('[K3] a density is what was weighed in so much room', () => {
    const bench = rested()
    const how = { massUg: 9_870_000, volumeMl: 10 }
    bench.intend({ do: 'measure', result: { property: 'density', label: 'Density', unit: 'g/mL', value: 5, how } })
    expect(bench.state.measurements.at(-1)?.body.value).toBe(0.987)
  })

  test('[K4] a torque outside 10–100 % is kept and legible', () => {
    const bench = rested()
    bench.intend({ do: 'measure-all', results: [viscosity] })
    const body = recordOf(bench.state).results.rested.at(-1)?.body ?? {}
    expect(howWords(body, say)).toContain('torque 8 %, outside 10–100 %')
    for (const torquePercent of [10, 55, 100])
      expect(howWords({ how: { torquePercent } }, say)).toEqual([`torque ${torquePercent} %`])
    expect(howWords({ how: { torquePercent: 100.5 } }, say)).toEqual(['torque 100.5 %, outside 10–100 %'])
  })

  test('[K7] a way of reading that cannot be is refused', () => {
    const bench = rested()
    const why = (result: Partial<Result>) =>
      bench.refusal({ do: 'measure', result: { property: 'other', label: 'x', ...result } })
    expect(why({ property: 'feel', readings: [5, 10] })).toMatchObject({
      code: 'OFF_SCALE',
      value: 10,
      least: 1,
      most: 9,
    })
    expect(why({ property: 'feel', value: 4.5 }).code).toBe('OFF_SCALE')
    const scale = { least: 1, most: 5, low: 'tacky', high: 'silky' }
    expect(why({ property: 'feel', value: 6, how: { scale } }).code).toBe('OFF_SCALE')
    expect(why({ ...viscosity, how: { rpm: 0 } })).toMatchObject({ code: 'HOW_ABSURD', what: 'speed' })
    expect(why({ ...viscosity, how: { torquePercent: 480 } })).toMatchObject({ code: 'HOW_ABSURD', what: 'torque' })
    expect(why({ how: { spin: { by: 'rpm', figure: 3000, minutes: 0, separated: false } } }).code).toBe('HOW_ABSURD')
    expect(why({ how: { massUg: 1_000_000, volumeMl: 0 } }).code).toBe('HOW_ABSURD')
  })

  test('[K8] lists tell what waits and what is out of limits; a kept jar settles neither', () => {
    const bench = rested()
    const waiting = () => summaryOf(bench.state).checksDue.map(({ check }) => check)
    bench.strike(bench.events.findLast(({ kind, body }) => kind === 'measured' && isOf(body, 'viscosity'))?.id ?? '')
    expect(waiting()).toEqual(['viscosity', 'odour'])
    bench.intend({ do: 'measure', result: { ...viscosity, readings: [500], conditions: '40 °C, week 1' } })
    expect(waiting()).toEqual(['viscosity', 'odour'])
    expect(summaryOf(bench.state).outOfLimits).toBeUndefined()
    bench.intend({ do: 'measure', result: { ...viscosity, readings: [500, 700] } })
    expect(waiting()).toEqual(['odour'])
    expect(summaryOf(bench.state).outOfLimits).toBe(1)
    bench.intend({ do: 'measure', result: viscosity })
    expect(summaryOf(bench.state).outOfLimits).toBeUndefined()
  })
})

const isOf = (body: unknown, check: string): boolean =>
  typeof body === 'object' && body !== null && 'check' in body && body.check === check
