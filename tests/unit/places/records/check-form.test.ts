import { describe, expect, test } from 'vitest'
import { decide } from '../../../../src/batch/decide.ts'
import { recordOf } from '../../../../src/batch/record.ts'
import { createCheckForm } from '../../../../src/places/records/check-form.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'

const nowMs = Date.UTC(2026, 10, 24, 12)

const waiting = demonstrationBatches().find(({ state }) => state.header.code === 'QW-LOT-01-012')

function formOf() {
  if (!waiting) throw new Error('no batch that waits for its checks')
  return createCheckForm(recordOf(waiting.state), { nowMs: () => nowMs, offsetMinutes: () => 60 })
}

describe('a check entered from the record', () => {
  test('begins with the first check that is still to be read after the rest', () => {
    expect(formOf().chosen.value?.id).toBe('ph-rested')
  })

  test('a number with its sample temperature fulfils the planned step', () => {
    const form = formOf()
    form.change({ value: '5,12', sampleC: '25' })
    expect(form.read()).toEqual({
      do: 'measure',
      result: {
        property: 'pH',
        check: 'ph-rested',
        label: 'pH, rested',
        step: 'ph-next-day',
        basis: { kind: 'dilution', fraction: 0.1 },
        value: 5.12,
        sampleC: 25,
      },
    })
  })

  test('a kept jar carries its conditions and fulfils no step', () => {
    const form = formOf()
    form.change({ check: 'viscosity', value: '11400', conditions: '40 °C, week 4' })
    const result = form.read()?.result
    expect(result).toMatchObject({ conditions: '40 °C, week 4', unit: 'mPa·s', value: 11400 })
    expect(result?.step).toBeUndefined()
  })

  test('what is looked at needs words and a judgement', () => {
    const form = formOf()
    form.change({ check: 'appearance' })
    expect(form.read()).toBeNull()
    expect(form.problem.value).toEqual({ field: 'seen', refusal: { code: 'CHECK_NOT_SEEN' } })
    form.change({ seen: 'white, even' })
    expect(form.read()).toBeNull()
    expect(form.problem.value?.field).toBe('good')
    form.change({ good: 'yes' })
    expect(form.read()?.result).toMatchObject({ text: 'white, even', good: true })
  })

  test.each([
    [{ value: 'five' }, 'value', 'NUMBER_LETTERS'],
    [{ value: '' }, 'value', 'NUMBER_EMPTY'],
    [{ value: '-5' }, 'value', 'NUMBER_NEGATIVE'],
    [{ value: '5', sampleC: '2.5.0' }, 'sampleC', 'NUMBER_TWO_MARKS'],
    [{ value: '5', when: 'earlier' }, 'moment', 'CHECK_MOMENT_MISSING'],
    [{ value: '5', when: 'earlier', moment: '2026-11-25T09:00' }, 'moment', 'CHECK_IN_FUTURE'],
    [{ value: '5', when: 'earlier', moment: '2026-11-01T09:00' }, 'moment', 'CHECK_BEFORE_BATCH'],
    [{ value: '5', when: 'earlier', moment: '2026-11-24T09:00' }, 'reason', 'CHECK_REASON_MISSING'],
  ] as const)('%j is answered at its field and keeps what was typed', (part, field, code) => {
    const form = formOf()
    form.change(part)
    expect(form.read()).toBeNull()
    expect(form.problem.value).toMatchObject({ field, refusal: { code } })
    expect(form.draft.value).toMatchObject(part)
  })

  test('[E44] a late entry keeps the moment it happened, and the reason stands beside it', () => {
    const form = formOf()
    form.change({ value: '5.1', when: 'earlier', moment: '2026-11-24T11:30', reason: 'hands were full' })
    const intention = form.read()
    expect(intention?.late).toEqual({ occurredAt: '2026-11-24T11:30:00.000+01:00', reason: 'hands were full' })
    if (!waiting || !intention) throw new Error('nothing to decide')
    const decided = decide(waiting.state, intention, { nowMs, by: 'person-rk', newId: () => 'id' })
    if (!decided.ok) throw new Error(decided.refusal.code)
    expect(decided.value[0]).toMatchObject({ kind: 'measured', occurredAt: '2026-11-24T11:30:00.000+01:00' })
    expect(decided.value[1]).toMatchObject({
      kind: 'noted',
      body: { text: 'pH, rested entered late: hands were full' },
    })
  })
})
