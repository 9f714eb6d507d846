import { describe, expect, it } from 'vitest'
import type { FieldSpec } from '../../../src/app/forms/field-spec'
import { isSaidWhileTyping, readField, readFields } from '../../../src/app/forms/read-fields'
import { settleTyped } from '../../../src/app/forms/settle-typed'
import { showFields } from '../../../src/app/forms/show-fields'

const specs: FieldSpec[] = [
  { key: 'name', label: 'Name', kind: 'text' },
  { key: 'share', label: 'Share', kind: 'number', percent: true },
  { key: 'hazards.caution', label: 'Caution', kind: 'text', optional: true },
  { key: 'hazards.wear', label: 'Wear', kind: 'list', optional: true },
  { key: 'tareUg', label: 'Tare', kind: 'mass', optional: true },
  { key: 'volatile', label: 'Volatile', kind: 'switch', optional: true },
  { key: 'inci', label: 'INCI', kind: 'parts' },
]

const values = {
  name: ' Panthenol 75 % ',
  share: '1,33',
  'hazards.caution': '',
  tareUg: '0.5 kg',
  inci: 'Panthenol 75\nAqua: 25 %',
}

describe('plain forms', () => {
  it('[I20] a typed percentage becomes the fraction as it was written, with point or comma', () => {
    expect(readField(specs[1] as FieldSpec, '1,33')).toEqual({ ok: true, value: 0.0133 })
    expect(readField(specs[1] as FieldSpec, '1.33 %')).toEqual({ ok: true, value: 0.0133 })
    expect(readField(specs[1] as FieldSpec, '7')).toEqual({ ok: true, value: 0.07 })
  })

  it('an empty optional field is left out of the document, and a group without any field with it', () => {
    const read = readFields(specs, values, { id: 'm1', hazards: { caution: 'old' } })
    expect(read).toEqual({
      ok: true,
      value: {
        id: 'm1',
        name: 'Panthenol 75 %',
        share: 0.0133,
        tareUg: 500_000_000,
        inci: [
          { name: 'Panthenol', fraction: 0.75 },
          { name: 'Aqua', fraction: 0.25 },
        ],
      },
    })
  })

  it('fields that the form does not show stay as they were', () => {
    const read = readFields(specs.slice(2, 3), { 'hazards.caution': 'Caustic' }, { hazards: { kind: 'caustic' }, x: 1 })
    expect(read).toEqual({ ok: true, value: { hazards: { kind: 'caustic', caution: 'Caustic' }, x: 1 } })
  })

  it('every wrong field is said at once', () => {
    const read = readFields(specs, { name: '', share: '101', tareUg: 'five', inci: 'A 50\nB' })
    expect(read).toEqual({
      ok: false,
      refusal: {
        name: { code: 'FIELD_EMPTY', label: 'Name' },
        share: { code: 'FIELD_ABOVE', limit: 100, unit: '%' },
        tareUg: { code: 'NUMBER_LETTERS', text: 'five' },
        inci: { code: 'PART_WITHOUT_SHARE', line: 2 },
      },
    })
  })

  it('what is shown is read back as the same document', () => {
    const document = { name: 'Wax', share: 0.0007, tareUg: 312_460_000, inci: [{ name: 'Cera Alba', fraction: 1 }] }
    const shown = showFields(specs, document, ',')
    expect(shown.share).toBe('0,07')
    expect(readFields(specs, shown)).toEqual({ ok: true, value: document })
  })

  it('a date that no calendar has is refused', () => {
    const date: FieldSpec = { key: 'd', label: 'Expires', kind: 'date' }
    expect(readField(date, '2026-02-28').ok).toBe(true)
    expect(readField(date, '2026-02-29')).toEqual({ ok: false, refusal: { code: 'FIELD_NOT_A_DATE' } })
  })

  it('a typed sum is worked out, and one that makes no sense stays as it was typed', async () => {
    const settled = await settleTyped(specs, { share: '3/2', tareUg: '250.31-187.02', name: '2-1' }, '.')
    expect(settled).toMatchObject({ share: '1.5', tareUg: '63.29', name: '2-1' })
    expect((await settleTyped(specs, { share: '3/0' }, '.')).share).toBe('3/0')
    expect(await settleTyped(specs, { tareUg: '2*125 mg', share: '3/2 %' }, '.')).toMatchObject({
      tareUg: '250 mg',
      share: '1.5 %',
    })
  })

  it('a figure in another unit is put in the unit of its field when that is left, and only then counts', async () => {
    const minutes: FieldSpec = { key: 'minutes', label: 'How long', kind: 'number', unit: 'min', max: 120 }
    expect((await settleTyped([minutes], { minutes: '1,5 h' }, ',')).minutes).toBe('90')
    expect((await settleTyped([minutes], { minutes: '1+0.5 h' }, '.')).minutes).toBe('90')
    expect((await settleTyped([minutes], { minutes: '3 kg' }, '.')).minutes).toBe('3 kg')
    const early = readField(minutes, '1.5 h')
    expect(early).toEqual({ ok: false, refusal: { code: 'FIELD_OTHER_UNIT', unit: 'min' } })
    expect(!early.ok && isSaidWhileTyping(early.refusal)).toBe(false)
    expect(readField(minutes, '3 kg')).toMatchObject({ refusal: { code: 'NUMBER_LETTERS' } })
  })

  it('a difference of temperatures takes no other unit', async () => {
    const apart: FieldSpec = { key: 'apart', label: 'Apart', kind: 'number', unit: '°C', difference: true }
    expect((await settleTyped([apart], { apart: '50 °F' }, '.')).apart).toBe('50 °F')
    expect(readField(apart, '50 °F')).toMatchObject({ refusal: { code: 'NUMBER_LETTERS' } })
  })
})
