import { describe, expect, test } from 'vitest'
import { base64Of } from '../../../src/batch/base64'
import { type DeviceSigned, keyIdOf, signedText } from '../../../src/batch/device-signature'
import type { Event } from '../../../src/batch/event'
import { fingerprintOf, isOfKey, keyIn, keyStream } from '../../../src/batch/key-trail'
import { isOfPicture, pictureDraft, pictureIn, pictureName, pictureStream } from '../../../src/batch/picture'
import { deviceRecord } from '../../../src/batch/record-device'
import { hashOf, seal } from '../../../src/batch/seal'
import { emptyTip } from '../../../src/batch/tip'
import { twinOf, verifyTrail } from '../../../src/batch/verify-trail'
import { openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { entryOf } from '../../support/words'

const key = '0123456789abcdef'.repeat(4)
const other = (kind: string, body: object, more: Partial<Event> = {}): Event => ({
  ...entryOf('resumed', {}),
  stream: keyStream(key),
  kind,
  body,
  ...more,
})

describe('[E92] the stream of a key', () => {
  const made = other('key-made', { publicKey: 'spki' }, { at: '2026-11-24T10:00:00Z' })
  const lost = other('key-lost', { why: 'unusable', instead: 'new' }, { at: '2026-11-25T08:00:00Z' })

  test('is named by its key, and shown by the first sixteen signs in fours', () => {
    expect(keyStream('abc')).toBe('device:abc')
    expect(fingerprintOf(key)).toBe('0123 4567 89ab cdef')
  })

  test('says when the key was made, and how it was lost', () => {
    expect(keyIn(keyStream(key), [made])).toEqual({ key, madeAt: '2026-11-24T10:00:00Z' })
    const gone = { why: 'unusable', instead: 'new', at: '2026-11-25T08:00:00Z' }
    expect(keyIn(keyStream(key), [made, lost])).toEqual({ key, madeAt: '2026-11-24T10:00:00Z', lost: gone })
  })

  test('says nothing of a key that it does not say was made, nor by kinds and versions it does not know', () => {
    expect(keyIn(keyStream(key), [])).toBeNull()
    expect(keyIn(keyStream(key), [lost])).toBeNull()
    expect(keyIn(keyStream(key), [{ ...made, v: 2 }])).toBeNull()
    expect([made, lost, { ...made, v: 2 }, other('key-sung', {})].map(isOfKey)).toEqual([true, true, false, false])
  })
})

describe('[E87] the stream of a picture', () => {
  const bytes = new Uint8Array([1, 2, 3])
  const stream = pictureStream(pictureName(bytes))
  const how = { mime: 'image/png', width: 2, height: 1 }
  const kept = { ...entryOf('resumed', {}), stream, ...pictureDraft(bytes, how) }

  test('gives back the picture that it is named by, and no other', () => {
    expect(pictureIn([{ ...kept, kind: 'noted', body: {} }, kept])).toEqual({ ...how, base64: base64Of(bytes) })
    expect(pictureIn([])).toBeNull()
    expect(pictureIn([{ ...kept, body: { ...how, base64: base64Of(new Uint8Array([1, 2, 4])) } }])).toBeNull()
    expect(pictureIn([{ ...kept, kind: 'noted' }])).toBeNull()
  })

  test('is of nothing that is no text of bytes', () => {
    expect(isOfPicture(base64Of(bytes), stream)).toBe(true)
    expect(isOfPicture('*', stream)).toBe(false)
    expect(isOfPicture(base64Of(bytes), `${stream}0`)).toBe(false)
  })
})

describe('[E86] a trail', () => {
  const bench = openTestBench(lotionHeader())
  bench.read('main', 20)
  bench.read('oil', 21)
  const all = bench.events
  const [first, main, oil] = [all[0], ...all.slice(-2)] as [Event, Event, Event]
  const changed = { ...main, body: { vessel: 'main', temperatureC: 30 } }
  const withChanged = all.map((event) => (event.id === main.id ? changed : event))

  test('without entries is whole', () => {
    expect(verifyTrail([])).toEqual({ intact: true, entries: 0, head: null })
    expect(verifyTrail(all)).toEqual({ intact: true, entries: all.length, head: oil.hash })
  })

  test('names the entry that was changed, and the field where another copy has it whole', () => {
    const found = { intact: false, entries: all.length, head: oil.hash, brokenAt: all.length - 1, why: 'CHANGED' }
    expect(verifyTrail(withChanged)).toEqual({ ...found, kind: 'temperature-read' })
    expect(verifyTrail(withChanged, all)).toEqual({
      ...found,
      kind: 'temperature-read',
      field: 'body.temperatureC',
    })
  })

  test('names the hash as the field where the next entry follows on what the others say', () => {
    const rehashed = all.map((event) => (event.id === main.id ? { ...main, hash: oil.hash } : event))
    expect(verifyTrail(rehashed)).toMatchObject({ brokenAt: all.length - 1, why: 'CHANGED', field: 'hash' })
  })

  test('misses what stood before an entry, the first of all too', () => {
    expect(verifyTrail([main, oil])).toMatchObject({ intact: false, brokenAt: 1, why: 'MISSING_BEFORE' })
    expect(verifyTrail([first, oil])).toMatchObject({ intact: false, brokenAt: 2, why: 'MISSING_BEFORE' })
    const loose = seal({ kind: 'noted', body: { text: 'loose' } }, emptyTip, {
      stream: first.stream,
      replica: 'elsewhere',
      id: 'loose',
      at: first.at,
      by: first.by,
    })
    expect(verifyTrail([first, loose])).toMatchObject({ intact: false, brokenAt: 2, why: 'MISSING_BEFORE' })
  })

  test('finds an entry in another copy by its hash, its id or its place, only where it is whole', () => {
    const off = { ...changed, id: 'x', replica: 'y', n: 99 }
    expect(twinOf(off, all)).toBe(main)
    expect(twinOf({ ...off, hash: '0', id: main.id }, all)).toBe(main)
    expect(twinOf({ ...off, hash: '0', replica: main.replica, n: main.n }, all)).toBe(main)
    expect(twinOf({ ...off, hash: '0' }, all)).toBeUndefined()
    expect(twinOf({ ...off, hash: '0', replica: main.replica }, all)).toBeUndefined()
    expect(twinOf(changed, [changed])).toBeUndefined()
    expect(hashOf(main)).toBe(main.hash)
  })
})

describe("[E91] a tablet's signature", () => {
  const signed = (head: string): DeviceSigned => ({ head, key, publicKey: 'spki', signature: 'rs' })

  test('is of batch and last entry, by the digest of a public key that is one', () => {
    expect(signedText('batch:b', 'ff')).toBe('pannikin head\nbatch:b\nff')
    expect(keyIdOf(base64Of(new Uint8Array([1, 2, 3])))).toBe(pictureName(new Uint8Array([1, 2, 3])))
    expect(keyIdOf('')).toBeNull()
    expect(keyIdOf('*')).toBeNull()
  })

  test('stands in the record with what it covers; an end that none covers is unsigned', () => {
    const one = { ...entryOf('resumed', {}), id: 'one', hash: 'h1' }
    const end = { ...entryOf('closed', { decision: 'accept' }), id: 'end', hash: 'h2', parents: ['h1'], n: 1 }
    const sign = (head: string) => ({
      ...entryOf('device-signed', signed(head)),
      id: 's',
      hash: 'h3',
      parents: ['h2'],
      n: 2,
    })
    const none = { entries: 0, strikes: 0 }
    expect(deviceRecord([one])).toEqual({ rows: [], isUnsigned: false })
    expect(deviceRecord([one, end])).toEqual({ rows: [], isUnsigned: true })
    const row = { entry: 's', stream: 'batch:b' }
    expect(deviceRecord([one, end, sign('h2')])).toMatchObject({
      rows: [{ ...row, signed: signed('h2'), covers: 2, after: none }],
      isUnsigned: false,
    })
    expect(deviceRecord([one, end, sign('h1')])).toMatchObject({ rows: [{ ...row, covers: 1 }], isUnsigned: true })
    expect(deviceRecord([one, end, sign('none')])).toMatchObject({ rows: [{ ...row, covers: null }], isUnsigned: true })
    const given = { ...entryOf('abandoned', { reason: 'split' }), id: 'end', hash: 'h2', parents: ['h1'], n: 1 }
    expect(deviceRecord([one, given])).toEqual({ rows: [], isUnsigned: true })
  })
})
