import * as v from 'valibot'
import { describe, expect, test } from 'vitest'
import { readDocument } from '../../../../src/batch/schemas/read-document'
import { faultInBody } from '../../../../src/batch/schemas/sound-body'
import { entryOf } from '../../../support/words'

const schema = v.object({
  name: v.string('a text'),
  lines: v.array(v.object({ share: v.number('a number') })),
})
const fault = (data: unknown) => {
  const read = readDocument(schema, data)
  return read.ok ? null : read.refusal
}
const sound = { name: 'Lotion', lines: [{ share: 0.5 }] }

describe('[I22] a field of a document that is wrong', () => {
  test('is said with its path, what it should be and what stands there', () => {
    const code = 'DOCUMENT_FIELD_WRONG'
    expect(fault({ ...sound, name: 7 })).toEqual({ code, path: 'name', wanted: 'a text', found: '7' })
    expect(fault({ ...sound, lines: [{ share: 1 }, { share: 'much' }] })).toEqual({
      code,
      path: 'lines[1].share',
      wanted: 'a number',
      found: '"much"',
    })
    expect(fault({ lines: [] })).toEqual({ code, path: 'name', wanted: 'there', found: '' })
    expect(fault('text')).toMatchObject({ code, path: '', found: '"text"' })
  })

  test('is shown with sixty signs at the most', () => {
    const found = (letters: number) => fault({ ...sound, lines: [{ share: 'x'.repeat(letters) }] })?.found
    expect(found(58)).toBe(`"${'x'.repeat(58)}"`)
    expect(found(59)).toBe(`"${'x'.repeat(58)}…`)
  })
})

describe('[I24] a field that is not known', () => {
  test('is left behind', () => {
    expect(readDocument(schema, { ...sound, extra: 1 })).toEqual({ ok: true, value: sound })
  })
})

describe('[I5] the body of an entry', () => {
  test('is sound, or its first wrong field is named', () => {
    const read = entryOf('temperature-read', { vessel: 'oil', temperatureC: 75 })
    expect(faultInBody(read)).toBeNull()
    expect(faultInBody({ ...read, body: { vessel: 'oil', temperatureC: 'hot' } })).toBe('body.temperatureC')
    expect(faultInBody({ ...read, body: 'hot' })).toBe('body')
    expect(faultInBody({ ...read, kind: 'sung-over', body: { tune: 3 } })).toBeNull()
  })

  test('of a picture is the one that its stream is named by', () => {
    const kept = { ...entryOf('resumed', {}), stream: 'picture:00', kind: 'bytes-kept' }
    expect(faultInBody({ ...kept, body: { mime: 'image/png', width: 1, height: 1, base64: 'AQID' } })).toBe(
      'body.base64',
    )
  })
})
