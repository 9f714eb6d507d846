import { describe, expect, test } from 'vitest'
import { gatesOf } from '../../../src/batch/gates'
import { isoOf } from '../../../src/batch/iso-of'
import type { Surroundings } from '../../../src/batch/kinds'
import { lastReading } from '../../../src/batch/temperature-gates'
import { minutesMs, openTestBench, type TestBench } from '../../support/batch'
import { benchWith, own } from '../../support/few-steps'
import { lotionHeader } from '../../support/formulas'

const gates = (bench: TestBench, moment: 'begin' | 'finish') => gatesOf(bench.state, own, bench.nowMs, moment)
const read = (bench: TestBench, vessel: string, temperatureC: number): string => {
  bench.read(vessel, temperatureC)
  return bench.events.at(-1)?.id ?? ''
}

describe('[G2] the end of a heating or a cooling', () => {
  test('asks for a reading, and for one that is hot enough, to a degree', () => {
    const bench = benchWith({ kind: 'heat', targetC: 75 })
    const gate = { passable: true, vessel: 'main' }
    expect(gates(bench, 'finish')).toEqual([
      { ...gate, code: 'TEMPERATURE_UNKNOWN', key: 'TEMPERATURE_UNKNOWN', limitC: 75 },
    ])
    expect(gates(bench, 'begin')).toEqual([])
    const entry = read(bench, 'main', 73.9)
    expect(gates(bench, 'finish')).toEqual([
      { ...gate, code: 'NOT_YET_WARM', key: `NOT_YET_WARM:${entry}`, leastC: 75, lastC: 73.9 },
    ])
    read(bench, 'main', 74)
    expect(gates(bench, 'finish')).toEqual([])
  })

  test('asks for one that is cool enough', () => {
    const bench = benchWith({ kind: 'cool', targetC: 40, by: 'air' })
    const gate = { passable: true, vessel: 'main', limitC: 40 }
    expect(gates(bench, 'finish')).toEqual([{ ...gate, code: 'TEMPERATURE_UNKNOWN', key: 'TEMPERATURE_UNKNOWN' }])
    const entry = read(bench, 'main', 40.1)
    bench.wait(2)
    expect(gates(bench, 'finish')).toEqual([
      { ...gate, code: 'TOO_HOT', key: `TOO_HOT:${entry}`, lastC: 40.1, ageMs: minutesMs(2) },
    ])
    read(bench, 'main', 40)
    expect(gates(bench, 'finish')).toEqual([])
  })
})

describe('[G3] two phases', () => {
  const asked = { kind: 'combine', from: 'oil', maxDifferenceC: 5, bothAtLeastC: 70 } as const

  test('are asked about where one was not read', () => {
    const bench = benchWith(asked)
    const unknown = (vessel: string) => ({
      code: 'TEMPERATURE_UNKNOWN',
      key: `TEMPERATURE_UNKNOWN:${vessel}`,
      passable: true,
      vessel,
      limitC: 70,
    })
    expect(gates(bench, 'begin')).toEqual([unknown('main'), unknown('oil')])
    read(bench, 'main', 72)
    expect(gates(bench, 'begin')).toEqual([unknown('oil')])
    const apart = benchWith({ kind: 'combine', from: 'oil', maxDifferenceC: 5 })
    expect(gates(apart, 'begin')[0]).not.toHaveProperty('limitC')
    expect(gates(benchWith({ kind: 'combine', from: 'oil' }), 'begin')).toEqual([])
  })

  test('are held back where one is too cold, or they are too far apart, each for its own readings', () => {
    const bench = benchWith(asked)
    const main = read(bench, 'main', 69)
    read(bench, 'oil', 74)
    expect(gates(bench, 'begin')).toEqual([])
    const hot = read(bench, 'oil', 74.1)
    const apart = { code: 'TOO_FAR_APART', passable: true, mostC: 5 }
    expect(gates(bench, 'begin')).toEqual([
      { ...apart, key: `TOO_FAR_APART:${main}:${hot}`, differenceC: expect.closeTo(5.1, 9) },
    ])
    const cold = read(bench, 'main', 68.9)
    expect(gates(bench, 'begin')).toEqual([
      {
        code: 'NOT_YET_WARM',
        key: `NOT_YET_WARM:main:${cold}`,
        passable: true,
        vessel: 'main',
        leastC: 70,
        lastC: 68.9,
      },
      { ...apart, key: `TOO_FAR_APART:${cold}:${hot}`, differenceC: expect.closeTo(5.2, 9) },
    ])
  })

  test('are read anew after a quarter of an hour', () => {
    const bench = benchWith(asked)
    const main = read(bench, 'main', 72)
    bench.wait(15)
    read(bench, 'oil', 72)
    expect(gates(bench, 'begin')).toEqual([])
    bench.wait(0.5)
    expect(gates(bench, 'begin')).toEqual([
      {
        code: 'TEMPERATURE_OLD',
        key: `TEMPERATURE_OLD:main:${main}`,
        passable: true,
        vessel: 'main',
        limitC: 70,
        lastC: 72,
        ageMs: minutesMs(15.5),
      },
    ])
    expect(lastReading(bench.state, 'main', bench.nowMs)).toEqual({
      vessel: 'main',
      temperatureC: 72,
      ageMs: minutesMs(15.5),
      entry: main,
    })
    expect(lastReading(bench.state, 'slurry', bench.nowMs)).toBeUndefined()
  })
})

describe('[G7] what heats or cools', () => {
  test.each<[string, (temperatureC: number) => Surroundings, number, number]>([
    ['a room', (temperatureC) => ({ of: 'room', temperatureC }), 0, 45],
    ['a bath', (temperatureC) => ({ of: 'bath', vessel: 'oil', temperatureC }), -20, 150],
    ['a plate', (setC) => ({ of: 'plate', vessel: 'oil', setC }), 45, 250],
  ])('%s is what it can be, and no more', (_what, about, leastC, mostC) => {
    const bench = openTestBench(lotionHeader())
    for (const temperatureC of [leastC, mostC])
      expect(bench.intend({ do: 'tell-surroundings', about: about(temperatureC) })[0]?.body).toEqual(
        about(temperatureC),
      )
    for (const temperatureC of [leastC - 0.1, mostC + 0.1])
      expect(bench.refusal({ do: 'tell-surroundings', about: about(temperatureC) })).toEqual({
        code: 'SURROUNDINGS_ABSURD',
        temperatureC,
        leastC,
        mostC,
      })
  })

  test('is of a vessel that is here; a plate need not be set, a bath needs a word for its change', () => {
    const bench = openTestBench(lotionHeader())
    const plate = { of: 'plate', vessel: 'oil' } as const
    expect(bench.intend({ do: 'tell-surroundings', about: plate })[0]?.body).toEqual(plate)
    expect(bench.refusal({ do: 'tell-surroundings', about: { ...plate, vessel: 'pot' } })).toEqual({
      code: 'UNKNOWN_VESSEL_HERE',
      vessel: 'pot',
    })
    expect(bench.refusal({ do: 'change-bath', vessel: 'oil', what: ' ' })).toEqual({ code: 'REASON_MISSING' })
    const [changed] = bench.intend({ do: 'change-bath', vessel: 'oil', what: ' ice added ' })
    expect(changed?.body).toEqual({ vessel: 'oil', what: 'ice added' })
  })
})

describe('[E44] a temperature written late', () => {
  test('lies between the opening and now, with its reason beside it', () => {
    const bench = openTestBench(lotionHeader())
    bench.wait(10)
    const late = (minutes: number, reason = ' hands were full ') =>
      ({
        do: 'read-temperature',
        vessel: 'oil',
        temperatureC: 40,
        step: 'b-melt',
        late: { occurredAt: isoOf(bench.nowMs + minutesMs(minutes), 60), reason },
      }) as const
    for (const moment of [0.1, -10.1]) expect(bench.refusal(late(moment))).toEqual({ code: 'MOMENT_BAD' })
    expect(bench.refusal(late(-5, ' '))).toEqual({ code: 'REASON_MISSING' })
    const [first, why] = bench.intend(late(-5))
    expect(first).toMatchObject({ body: { vessel: 'oil', temperatureC: 40, step: 'b-melt' } })
    expect(first?.occurredAt).toBe(isoOf(bench.nowMs - minutesMs(5), 60))
    expect(why?.body).toEqual({ text: 'A temperature entered late: hands were full', step: 'b-melt' })
    expect([bench.intend(late(0)), bench.intend(late(-10))].map((written) => written.length)).toEqual([2, 2])
  })
})
