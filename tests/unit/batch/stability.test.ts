import { describe, expect, test } from 'vitest'
import { foldBatch } from '../../../src/batch/fold'
import { isoOf } from '../../../src/batch/iso-of'
import { dayMs, standingOf } from '../../../src/batch/pulls'
import { howWords } from '../../../src/batch/result-words'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { pullsLeft, stabilityOf } from '../../../src/batch/stability'
import { jarName, jarOf, type StabilityPlan } from '../../../src/batch/stability-plan'
import { measuresOf, stabilityTemplates } from '../../../src/batch/stability-templates'
import { shelfOf, summaryOf } from '../../../src/batch/summary-of'
import { openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { jar, middayOf, plan, plannedBench, pull, wholeJar } from '../../support/stability'

describe('a stability plan', () => {
  test.each(stabilityTemplates)('[K33] the template "$name" can be kept as it is', (template) => {
    const bench = openTestBench(lotionHeader())
    const measures = measuresOf(bench.state.header.revision.specification)
    expect(measures.map(({ id }) => id)).toEqual(['ph-rested', 'viscosity', 'appearance', 'odour'])
    const { id: _id, ...kept } = template
    const events = bench.intend({ do: 'plan-stability', plan: { ...kept, measures, startsAtMs: middayOf(0) } })
    expect(events.map(faultInBody).filter((fault) => fault !== null)).toEqual([])
    expect(stabilityOf(foldBatch(bench.events))?.plan.name).toBe(template.name)
  })

  test.each<[string, Partial<StabilityPlan>]>([
    ['PLAN_LACKS', { name: ' ' }],
    ['PLAN_LACKS', { conditions: [] }],
    ['PLAN_LACKS', { measures: [] }],
    ['PLAN_LACKS', { pulls: [] }],
    ['PLAN_LONG', { name: 'x'.repeat(81) }],
    ['PLAN_LONG', { measures: [{ id: 'h', property: 'other', label: 'Height', unit: 'm'.repeat(41) }] }],
    ['PULL_DAY_BAD', { pulls: [{ day: 7.5, windowDays: 1 }] }],
    ['PULL_DAY_BAD', { pulls: [{ day: -1, windowDays: 1 }] }],
    ['WINDOW_BAD', { pulls: [{ day: 7, windowDays: 61 }] }],
    ['CYCLE_BAD', { conditions: [{ id: 'ft', label: 'Freeze–thaw', cycles: { hours: 0, pulls: [1] } }] }],
    ['CYCLE_BAD', { conditions: [{ id: 'ft', label: 'Freeze–thaw', cycles: { hours: 48, pulls: [0] } }] }],
    ['PLAN_TWICE', { conditions: [plan.conditions[0], { id: 'other', label: '25 °C' }].flatMap((each) => each ?? []) }],
    ['PLAN_TWICE', { pulls: [plan.pulls[0], plan.pulls[0]].flatMap((each) => each ?? []) }],
    ['UNIT_MISSING', { measures: [{ id: 'h', property: 'other', label: 'Height', limits: { min: 1 } }] }],
    ['BEFORE_THE_BATCH', { startsAtMs: middayOf(-1) }],
  ])('[K33] %s: what it lacks, has twice or cannot be is said', (code, changed) => {
    const bench = openTestBench(lotionHeader())
    expect(bench.refusal({ do: 'plan-stability', plan: { ...plan, ...changed } }).code).toBe(code)
  })

  test('[K33] the last plan that was not struck out counts, and what was read stays with its jars', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(7)
    bench.intend(pull('25c', 7))
    const [event] = bench.intend({
      do: 'plan-stability',
      plan: { ...plan, name: 'Shorter', pulls: plan.pulls.slice(0, 1) },
    })
    expect(stabilityOf(bench.state)?.pulls).toHaveLength(4)
    expect(jar(bench, '25c.7').readings).toHaveLength(3)
    bench.strike(event?.id ?? '')
    expect(stabilityOf(bench.state)?.plan.name).toBe('Four weeks')
  })
})

describe('a pull', () => {
  test('[K34] is to come, due, late, then missed, by the clock alone', () => {
    const bench = plannedBench()
    const standing = (day: number) => standingOf(jar(bench, '25c.7'), middayOf(day))
    expect([5.4, 5.6, 7, 8.4, 8.6, 17.4, 17.6].map(standing)).toEqual([
      'to come',
      'due',
      'due',
      'due',
      'late',
      'late',
      'missed',
    ])
    expect(standingOf(jar(bench, '25c.28'), middayOf(38.4))).toBe('late')
    expect(standingOf(jar(bench, '25c.28'), middayOf(38.6))).toBe('missed')
  })

  test('[K35] has the units of the plan, and what was read of one jar is of that jar alone', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(7)
    const events = bench.intend(pull('40c', 7))
    expect(events.map(({ body }) => body)).toMatchObject([
      { check: 'ph-rested', value: 5.1, conditions: '40 °C, week 1' },
      { check: 'viscosity', value: 11_000, unit: 'mPa·s', conditions: '40 °C, week 1' },
      { check: 'look', text: 'white, even', good: true },
    ])
    expect(events.map(faultInBody).filter((fault) => fault !== null)).toEqual([])
    expect(jar(bench, '40c.7').left).toEqual([])
    expect(jar(bench, '25c.7').left).toHaveLength(3)
  })

  test('[K35] a number where the plan has no unit, an absurd one, nothing, and a jar that is not there are refused', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(7)
    expect(bench.refusal(pull('25c', 7, [{ measure: 'look', value: 3 }])).code).toBe('UNIT_MISSING')
    expect(bench.refusal(pull('25c', 7, [{ measure: 'ph-rested', value: 51 }]))).toMatchObject({ meant: 5.1 })
    expect(bench.refusal(pull('25c', 7, [])).code).toBe('NOTHING_READ')
    expect(bench.refusal(pull('25c', 7, [{ measure: 'look', text: ' ' }])).code).toBe('NOTHING_READ')
    expect(bench.refusal(pull('25c', 8)).code).toBe('NO_SUCH_JAR')
    expect(openTestBench(lotionHeader()).refusal(pull('25c', 7)).code).toBe('NO_SUCH_JAR')
  })

  test('[K44] keeps how a viscosity was read, refuses what no viscometer shows, and reads what said nothing of it', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(7)
    const how = { spindle: '4', rpm: 12, torquePercent: 7 }
    const read = (more: object) => pull('25c', 7, [{ measure: 'viscosity', value: 11_000, ...more }])
    expect(bench.refusal(read({ how: { ...how, torquePercent: 500 } }))).toMatchObject({
      code: 'HOW_ABSURD',
      what: 'torque',
    })
    expect(bench.refusal(read({ sampleC: 2500 })).code).toBe('TEMPERATURE_ABSURD')
    const events = bench.intend(read({ how, sampleC: 30, readings: [10_900, 11_300] }))
    expect(events.map(faultInBody)).toEqual([null])
    expect(events[0]?.body).toMatchObject({ value: 11_100, how, sampleC: 30 })
    const say = { mass: String, number: String, percent: String }
    expect(howWords(jar(bench, '25c.7').readings[0]?.body ?? {}, say).join(', ')).toBe(
      '2 readings: 10900; 11300; range 400, spindle 4, 12 rpm, torque 7 %, outside 10–100 %',
    )
    bench.intend(pull('40c', 7))
    expect(jar(bench, '40c.7').readings.map(({ body }) => body.how)).toEqual([undefined, undefined, undefined])
  })

  test('[K35] read twice or before its time it asks, and a second reading that is meant is kept beside the first', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(3)
    expect(bench.refusal(pull('25c', 7))).toMatchObject({ code: 'PULL_EARLY', jar: '25 °C, week 1', days: 3 })
    bench.nowMs = middayOf(7)
    bench.intend(pull('25c', 7))
    const again = pull('25c', 7, [{ measure: 'viscosity', value: 10_900 }])
    expect(bench.refusal(again)).toMatchObject({
      code: 'PULLED_ALREADY',
      label: 'Viscosity, rested',
      was: '11000 mPa·s',
    })
    bench.intend({ ...again, meant: ['PULLED_ALREADY'] })
    expect(jar(bench, '25c.7').readings).toHaveLength(4)
  })

  test('[K36] one that comes late says by how many days, also where it was read in time and written later', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(12)
    bench.intend(pull('25c', 7))
    expect(jar(bench, '25c.7').lateDays).toBe(4)
    const late = { occurredAt: isoOf(middayOf(8), 0), reason: 'written on paper first' }
    bench.intend({ ...pull('40c', 7), late })
    expect(jar(bench, '40c.7').lateDays).toBe(0)
    expect(jar(bench, '40c.7').readings[0]?.atMs).toBe(middayOf(8))
    expect(bench.events.at(-1)?.body).toEqual({
      text: 'pH, rested, Viscosity, rested, Appearance entered late: written on paper first',
    })
  })

  test('[K36] a moment to come, one before the batch, and one without its reason are refused', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(7)
    const at = (day: number, reason = 'forgotten') => ({
      ...pull('25c', 7),
      late: { occurredAt: isoOf(middayOf(day), 0), reason },
    })
    expect(bench.refusal(at(8)).code).toBe('MOMENT_BAD')
    expect(bench.refusal(at(-1)).code).toBe('BEFORE_THE_BATCH')
    expect(bench.refusal(at(6, ' ')).code).toBe('REASON_MISSING')
  })

  test('[K38] what was read of kept jars before there was a plan counts for its jars; what was struck out does not', () => {
    const bench = openTestBench(lotionHeader())
    bench.nowMs = middayOf(7)
    bench.measure({ check: 'ph-rested', value: 5.08, conditions: '40 °C, week 1' })
    bench.measure({ check: 'ph-rested', value: 5.07, conditions: 'by the window' })
    bench.intend({ do: 'plan-stability', plan })
    expect(jar(bench, '40c.7').readings.map(({ body }) => body.value)).toEqual([5.08])
    bench.strike(jar(bench, '40c.7').readings[0]?.entry ?? '')
    expect(jar(bench, '40c.7').readings).toEqual([])
  })

  test('[K38] a jar is read back from its name', () => {
    for (const condition of plan.conditions)
      for (const at of [0, 1, 3, 7, 28]) expect(jarOf(jarName(condition, at))).toEqual({ label: condition.label, at })
  })
})

describe('freeze and thaw', () => {
  test('[K37] cycles are counted, and a jar is not read before its own are through', () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(6)
    expect(jar(bench, 'ft.3').dueAtMs).toBe(middayOf(6))
    const count = { do: 'count-cycle', condition: 'ft' } as const
    bench.intend(count)
    expect(bench.refusal(pull('ft', 3))).toEqual({ code: 'CYCLES_BEHIND', counted: 1, wanted: 3 })
    bench.intend(count)
    const [third] = bench.intend(count)
    bench.intend(pull('ft', 3))
    expect(bench.refusal(count)).toEqual({ code: 'CYCLES_DONE', cycles: 3 })
    bench.strike(third?.id ?? '')
    expect(stabilityOf(bench.state)?.cycles.get('ft')).toBe(2)
    expect(bench.refusal({ ...count, condition: '25c' }).code).toBe('NO_SUCH_JAR')
  })
})

describe('what lists know', () => {
  test('[K39] what is left to be pulled stands in the summary, and keeps a closed batch to be looked at again', () => {
    const bench = plannedBench({ conditions: plan.conditions.slice(0, 1), pulls: plan.pulls.slice(0, 1) })
    bench.intend({ do: 'close', decision: 'hold', note: 'the jars come first' })
    expect(summaryOf(bench.state).pulls).toMatchObject([
      { id: '25c.7', jar: '25 °C, week 1', dueAtMs: middayOf(7), untilMs: middayOf(7) + 1.5 * dayMs },
    ])
    bench.nowMs = middayOf(7)
    bench.intend(pull('25c', 7, wholeJar.slice(0, 1)))
    expect(summaryOf(bench.state).pulls?.[0]?.left).toEqual(['Viscosity, rested', 'Appearance'])
    expect(shelfOf(summaryOf(bench.state))).toBe('follow-up')
    bench.intend(pull('25c', 7, wholeJar.slice(1)))
    expect(summaryOf(bench.state).pulls).toBeUndefined()
  })

  test('[K39] nothing is to be pulled of a batch that was given up', () => {
    const bench = plannedBench()
    expect(pullsLeft(bench.state)).toHaveLength(6)
    bench.intend({ do: 'abandon', reason: 'split' })
    expect(pullsLeft(bench.state)).toEqual([])
  })

  test('[K39] what was read of a kept jar is no rested check of the batch', () => {
    const bench = plannedBench()
    bench.intend({ do: 'close', decision: 'hold', note: 'the jars come first' })
    const labels = () => summaryOf(bench.state).checksDue.map(({ check }) => check)
    const before = labels()
    bench.nowMs = middayOf(7)
    bench.intend(pull('25c', 7))
    expect(before).toContain('ph-rested')
    expect(labels()).toEqual(before)
  })
})
