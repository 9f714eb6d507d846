import { signal } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import type { BatchHandle } from '../../../../src/app/app'
import { jarParts } from '../../../../src/app/jar-address'
import { routeOf } from '../../../../src/app/routes'
import { decide } from '../../../../src/batch/decide'
import { createJarEntry } from '../../../../src/places/records/jar-entry-model'
import { createPlanForm } from '../../../../src/places/records/stability-plan-form'
import type { TestBench } from '../../../support/batch'
import { jar, middayOf, plan, plannedBench, pull } from '../../../support/stability'

/** The bench as the app's handle of its batch. */
function handleOf(bench: TestBench): BatchHandle {
  const view = signal({ state: bench.state })
  return {
    id: 'one',
    view,
    intend: async (intention) => {
      const decision = decide(bench.state, intention, { nowMs: bench.nowMs, by: bench.by, newId: () => 'new' })
      if (!decision.ok) return decision
      const entries = bench.intend(intention).map(({ id }) => id)
      view.value = { state: bench.state }
      return { ok: true, entries, state: 'recorded' }
    },
  } as BatchHandle
}

async function entryAt(day: number, part: string, bench = plannedBench()) {
  bench.nowMs = middayOf(day)
  const kept = new Map<string, string>()
  const world = {
    batches: { open: async () => handleOf(bench) },
    log: {},
    drafts: {
      read: async (key: string) => kept.get(key) ?? null,
      write: async (key: string, text: string | null) => void (text === null ? kept.delete(key) : kept.set(key, text)),
    },
    clock: { nowMs: () => bench.nowMs, offsetMinutes: () => 0 },
  } as unknown as Parameters<typeof createJarEntry>[0]
  const model = createJarEntry(world, 'one', part)
  await model.open()
  return { bench, model, world }
}

describe('one pass over the jars', () => {
  test('[K43] holds what is due and late, and writes what was filled in with the units of the plan', async () => {
    const { bench, model } = await entryAt(7, jarParts.today)
    expect(model.jars.value?.map(({ name }) => name)).toEqual([
      'Freeze–thaw, cycle 3',
      '25 °C, week 1',
      '40 °C, week 1',
    ])
    model.set('one 25c.7 ph-rested', '5,12')
    model.set('one 25c.7 viscosity', '11200')
    model.set('one 40c.7 viscosity', '10900')
    model.set('one 40c.7 look good', 'yes')
    expect(model.filled.value).toBe(2)
    await model.record()
    expect(model.recorded.value).toEqual(['QW-LOT-01-041, 25 °C, week 1', 'QW-LOT-01-041, 40 °C, week 1'])
    expect(jar(bench, '25c.7').readings.map(({ body }) => [body.value, body.unit])).toEqual([
      [5.12, undefined],
      [11_200, 'mPa·s'],
    ])
    expect(jar(bench, '25c.7').left.map(({ id }) => id)).toEqual(['look'])
    expect(model.textOf('one 25c.7 viscosity')).toBe('')
  })

  test('[K43] nothing is written while one figure cannot be read, and what was typed stays through a reload', async () => {
    const { bench, model, world } = await entryAt(7, jarParts.today)
    model.set('one 25c.7 viscosity', '11200')
    model.set('one 40c.7 viscosity', 'thick')
    await model.record()
    expect(model.problem.value).toMatchObject({ key: 'one 40c.7 viscosity' })
    expect(jar(bench, '25c.7').readings).toEqual([])
    const again = createJarEntry(world, 'one', jarParts.today)
    await again.open()
    expect(again.textOf('one 40c.7 viscosity')).toBe('thick')
  })

  test('[K43] a jar before its time is asked about, and written once it is meant', async () => {
    const { bench, model } = await entryAt(2, '25c.7')
    model.set('one 25c.7 viscosity', '11200')
    await model.record()
    expect(model.questions.value.map(({ refusal }) => refusal.code)).toEqual(['PULL_EARLY'])
    expect(jar(bench, '25c.7').readings).toEqual([])
    const [question] = model.questions.value
    if (!question) throw new Error('not asked')
    await model.answer(question, true)
    expect(jar(bench, '25c.7').readings).toHaveLength(1)
  })

  test('[K43] a jar that was read can be read once more, and asks', async () => {
    const bench = plannedBench()
    bench.nowMs = middayOf(7)
    bench.intend(pull('25c', 7))
    const { model } = await entryAt(7, '25c.7', bench)
    model.set('one 25c.7 viscosity', '11100')
    await model.record()
    expect(model.questions.value.map(({ refusal }) => refusal.code)).toEqual(['PULLED_ALREADY'])
    const [question] = model.questions.value
    if (question) await model.answer(question, false)
    expect(jar(bench, '25c.7').readings).toHaveLength(3)
    expect(model.textOf('one 25c.7 viscosity')).toBe('')
  })

  test('[K44] a viscosity is read with spindle, speed, torque and temperature, and its readings are kept', async () => {
    const { bench, model } = await entryAt(7, jarParts.today)
    for (const [field, text] of Object.entries({
      '': '11200',
      ' count': '2',
      ' reading.1': '11400',
      ' spindle': '4',
      ' rpm': '12',
      ' torque': '57,5',
      ' sampleC': '25',
    }))
      model.set(`one 25c.7 viscosity${field}`, text)
    await model.record()
    const [reading] = jar(bench, '25c.7').readings
    expect(reading?.body).toMatchObject({
      value: 11_300,
      readings: [11_200, 11_400],
      unit: 'mPa·s',
      how: { spindle: '4', rpm: 12, torquePercent: 57.5 },
      sampleC: 25,
      conditions: '25 °C, week 1',
    })
    expect(model.textOf('one 25c.7 viscosity torque')).toBe('')
  })

  test('[K44] a torque without its reading, and one that cannot be read, stand at their field, and nothing is written', async () => {
    const { bench, model } = await entryAt(7, jarParts.today)
    model.set('one 25c.7 ph-rested', '5.1')
    model.set('one 25c.7 viscosity torque', '57')
    await model.record()
    expect(model.problem.value).toMatchObject({ key: 'one 25c.7 viscosity', refusal: { code: 'NUMBER_EMPTY' } })
    model.set('one 25c.7 viscosity', '11200')
    model.set('one 25c.7 viscosity torque', 'half')
    await model.record()
    expect(model.problem.value).toMatchObject({ key: 'one 25c.7 viscosity torque' })
    model.set('one 25c.7 viscosity torque', '57')
    model.set('one 25c.7 viscosity spindle', 'S'.repeat(41))
    await model.record()
    expect(model.problem.value).toMatchObject({
      key: 'one 25c.7 viscosity spindle',
      refusal: { code: 'CHECK_NAME_LONG' },
    })
    expect(jar(bench, '25c.7').readings).toEqual([])
  })

  test('[K44] a spindle that was put down for a jar not read yet stays when the rest of it is recorded', async () => {
    const { bench, model } = await entryAt(7, jarParts.today)
    model.set('one 25c.7 ph-rested', '5.1')
    model.set('one 25c.7 viscosity spindle', '4')
    await model.record()
    expect(jar(bench, '25c.7').readings).toHaveLength(1)
    expect(model.textOf('one 25c.7 ph-rested')).toBe('')
    expect(model.textOf('one 25c.7 viscosity spindle')).toBe('4')
  })

  test('[K43] the address of a jar leads to its entry', () => {
    expect(routeOf('#/records/01a17ca8/25c.28')).toEqual({ place: 'records', batch: '01a17ca8', part: '25c.28' })
    expect(routeOf('#/records/01a17ca8')).toEqual({ place: 'records', batch: '01a17ca8' })
  })
})

describe('the form of a plan', () => {
  test('[K33] gives back the plan it was opened with, and says which figure cannot be read', () => {
    const form = createPlanForm(plannedBench().state, 0)
    expect(form.read()).toMatchObject({
      name: plan.name,
      startsAtMs: plan.startsAtMs,
      conditions: [{ label: '25 °C' }, { label: '40 °C', accelerated: true }, { cycles: { hours: 48, pulls: [1, 3] } }],
      pulls: plan.pulls,
    })
    form.change({ pulls: [{ day: 'soon', windowDays: '1' }] })
    expect(form.read()).toBeNull()
    expect(form.problem.value?.what).toBe('Day')
    form.take('four-weeks')
    expect(form.read()?.pulls.map(({ day }) => day)).toEqual([0, 7, 14, 28])
  })
})
