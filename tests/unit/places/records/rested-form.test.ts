import { describe, expect, test } from 'vitest'
import { recordOf } from '../../../../src/batch/record.ts'
import { manualClock } from '../../../../src/devices/clock/manual-clock.ts'
import { aboutAll, createRestedForm } from '../../../../src/places/records/rested-form.ts'
import { readRow } from '../../../../src/places/records/rested-result.ts'
import type { RestedRow } from '../../../../src/places/records/rested-row.ts'
import { memoryStore } from '../../../../src/store/memory-store.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'

const waiting = demonstrationBatches().find(({ state }) => state.header.code === 'QW-LOT-01-012')

function formOf(drafts = memoryStore('tablet').drafts) {
  if (!waiting) throw new Error('no batch that waits for its checks')
  const clock = manualClock(Date.UTC(2026, 10, 24, 12), 60)
  return createRestedForm(recordOf(waiting.state), { drafts, clock })
}

describe('the pass after the rest', () => {
  test('[K1] has a row for everything that is due, and leaves out what is left empty', () => {
    const form = formOf()
    expect(form.rows.value.map(({ key, kind }) => [key, kind])).toEqual([
      ['ph-rested', 'number'],
      ['viscosity', 'viscosity'],
      ['appearance', 'seen'],
      ['odour', 'seen'],
    ])
    expect(form.read()).toBeNull()
    expect(form.problem.value).toMatchObject({ row: aboutAll, refusal: { code: 'CHECKS_EMPTY' } })
    form.set('ph-rested', 'reading.0', '5,12')
    form.set('viscosity', 'spindle', '4')
    expect(form.read()).toEqual({
      do: 'measure-all',
      results: [
        {
          property: 'pH',
          check: 'ph-rested',
          label: 'pH, rested',
          step: 'ph-next-day',
          basis: { kind: 'dilution', fraction: 0.1 },
          value: 5.12,
        },
      ],
    })
  })

  test('[K3] several readings of one check stand together', () => {
    const form = formOf()
    form.set('viscosity', 'count', '3')
    form.set('viscosity', 'reading.0', '11300')
    form.set('viscosity', 'reading.2', '11500')
    form.set('viscosity', 'torque', '7')
    expect(form.read()?.results[0]).toMatchObject({
      readings: [11_300, 11_500],
      unit: 'mPa·s',
      how: { torquePercent: 7 },
    })
  })

  test('[K5] beside the standard: as it, slightly and clearly different', () => {
    const form = formOf()
    form.set('appearance', 'difference', 'none')
    expect(form.read()?.results[0]).toMatchObject({ text: 'white, even, no grain', good: true })
    form.set('appearance', 'difference', 'slight')
    expect(form.read()).toBeNull()
    expect(form.problem.value).toMatchObject({ row: 'appearance', field: 'words' })
    form.set('appearance', 'words', 'a little shiny')
    expect(form.read()?.results[0]).toMatchObject({ good: true, how: { difference: 'slight' } })
    form.set('appearance', 'difference', 'clear')
    expect(form.read()?.results[0]).toMatchObject({ text: 'a little shiny', good: false })
  })

  test('[K6] what was typed is there again after a reload, free rows too, and gone once it is forgotten', async () => {
    const { drafts } = memoryStore('tablet')
    const first = formOf(drafts)
    first.addFree()
    first.set('free 1', 'label', 'Sting')
    first.set('ph-rested', 'reading.0', '5.')
    const second = formOf(drafts)
    await second.restore()
    expect(second.rows.value.at(-1)?.key).toBe('free 1')
    expect(second.textsOf('free 1')('label')).toBe('Sting')
    expect(second.textsOf('ph-rested')('reading.0')).toBe('5.')
    second.forget()
    const third = formOf(drafts)
    await third.restore()
    expect(third.textsOf('ph-rested')('reading.0')).toBe('')
    expect(third.rows.value).toHaveLength(4)
  })

  test('[K2] what no check asks for has a name, and its figure a unit', () => {
    const form = formOf()
    form.addFree()
    form.set('free 1', 'reading.0', '12')
    expect(form.read()).toBeNull()
    expect(form.problem.value).toMatchObject({ field: 'label', refusal: { code: 'CHECK_WITHOUT_NAME' } })
    form.set('free 1', 'label', 'Drop')
    expect(form.read()).toBeNull()
    expect(form.problem.value).toMatchObject({ field: 'unit', refusal: { code: 'CHECK_WITHOUT_UNIT' } })
    form.set('free 1', 'unit', 'mm')
    expect(form.read()?.results[0]).toEqual({ property: 'other', label: 'Drop', value: 12, unit: 'mm' })
  })

  test.each<[string, Omit<RestedRow, 'key'>, Record<string, string>, unknown]>([
    [
      'foam',
      rowOf('foam', 'foam'),
      { 'reading.0': '140', later: '120' },
      { value: 140, unit: 'mm', how: { later: { minutes: 5, value: 120 } } },
    ],
    [
      'centrifuge',
      rowOf('spin', 'centrifuge'),
      { spin: '3000', minutes: '30', separated: 'no' },
      {
        text: 'did not separate',
        good: true,
        how: { spin: { by: 'rpm', figure: 3000, minutes: 30, separated: false } },
      },
    ],
    [
      'density',
      rowOf('density', 'density'),
      { way: 'weighed', mass: '9.87', volume: '10' },
      { unit: 'g/mL', value: 0.987, how: { massUg: 9_870_000, volumeMl: 10 } },
    ],
    ['skin feel', rowOf('feel', 'feel'), { 'reading.0': '7' }, { value: 7, how: { scale: { least: 1, most: 9 } } }],
  ])('[K7] %s is read with what it asks for', (_, row, texts, wanted) => {
    expect(readRow({ key: 'x', ...row }, (field) => texts[field] ?? '')).toMatchObject(wanted as object)
  })

  test('[K7] what is missing of a spun or a weighed one is told at its field', () => {
    const spin = { key: 'x', ...rowOf('spin', 'centrifuge') }
    const texts: Record<string, string> = { separated: 'yes', spin: '3000' }
    expect(readRow(spin, (field) => texts[field] ?? '')).toMatchObject({
      field: 'minutes',
      refusal: { code: 'NUMBER_EMPTY' },
    })
  })
})

function rowOf(kind: RestedRow['kind'], property: 'foam' | 'centrifuge' | 'density' | 'feel'): Omit<RestedRow, 'key'> {
  return { kind, check: { id: 'x', property, label: property, when: 'after-rest' } }
}
