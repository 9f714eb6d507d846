import { describe, expect, test } from 'vitest'
import { createFormat } from '../../../../src/app/format'
import type { DeviceVerdict } from '../../../../src/app/sign/device-verdict'
import { signedWords } from '../../../../src/app/sign/key-words'
import { recordOf } from '../../../../src/batch/record'
import type { DeviceRow } from '../../../../src/batch/record-device'
import { findingsOf } from '../../../../src/batch/record-review'
import { deviceWords } from '../../../../src/places/records/device-words'
import { keyLines, keysHereOf } from '../../../../src/places/setup/device-key-words'
import { wholeBatch } from '../../../support/whole-batch'

const format = createFormat('.', 'en-GB')
const key = '3f2a91bc04de77aa'.padEnd(64, '0')
const old = { key: '77aa04de91bc3f2a'.padEnd(64, '0'), madeAt: '2026-11-03T10:00:00Z' }
const gone = { ...old, lost: { why: 'missing' as const, instead: key, at: '2026-11-24T10:00:00Z' } }
const row: DeviceRow = {
  entry: 'id-1',
  stream: 'batch:one',
  signed: { head: 'ab'.repeat(32), key, publicKey: '', signature: '' },
  covers: 142,
  after: { entries: 0, strikes: 0 },
}
const verdict: DeviceVerdict = { fits: true, from: 'here', journalled: null, insteadOf: [] }
const said = (more: Partial<DeviceVerdict>, of: Partial<DeviceRow> = {}) =>
  deviceWords({ ...row, ...of }, { ...verdict, ...more }, format).text

describe('a tablet’s signature in words', () => {
  test('[E93] says what it covers, by which tablet and key, whether it fits, and what was added after it', () => {
    expect(said({})).toBe('Entries 1 to 142 were signed by this tablet, key 3f2a 91bc 04de 77aa: the signature fits.')
    expect(said({}, { after: { entries: 1, strikes: 0 } })).toContain('the signature fits; 1 entry added after it.')
    expect(said({ fits: null })).toContain('this browser cannot check it, it needs a secure address (https).')
    expect(said({ from: 'journal' })).toContain('by a tablet that is known here')
    expect(said({ from: 'nowhere' })).toMatch(/by a tablet that is not known here.* Compare the key/)
  })

  test('[E93] that does not fit is told first, in the record, to a reviewer and by Verify', () => {
    expect(deviceWords(row, { ...verdict, fits: false }, format)).toEqual({
      text: 'The signature of a tablet with key 3f2a 91bc 04de 77aa does not fit: what stands here is not what was signed.',
      isUnfit: true,
    })
    expect(said({ fits: false }, { covers: null })).toContain('the entry that it signed is not here')
    const record = recordOf(wholeBatch().state)
    expect(findingsOf(record, [row])[0]).toMatchObject({ kind: 'device', at: 'verification' })
    expect(findingsOf(record).some(({ kind }) => kind === 'device')).toBe(false)
    expect(
      [[], [verdict], [verdict, { ...verdict, fits: false }], [{ ...verdict, fits: null }]].map(signedWords),
    ).toEqual([
      null,
      '1 signature of a tablet fits.',
      '1 signature of a tablet does not fit.',
      'This browser cannot check the signature of a tablet here: it needs a secure address (https).',
    ])
  })

  test('[E92] a key that is gone is told where it signed and where another signs instead', () => {
    const took = 'It came in the place of key 77aa 04de 91bc 3f2a, missing since 24 Nov 2026.'
    expect(said({ insteadOf: [gone] })).toContain(took)
    const lost = 'That key has been missing since 24 Nov 2026; what it signed still verifies.'
    expect(said({ from: 'journal', journalled: gone })).toContain(lost)
    // Said by another tablet, which never had it: it is here.
    expect(said({ from: 'here', journalled: gone })).not.toContain('missing')
  })
})

describe('the key in Setup', () => {
  test('[E92] is told with its day; one that is journalled and not here is told to be missing', () => {
    const lines = (own: string | null, known: Parameters<typeof keysHereOf>[1]) =>
      keyLines(keysHereOf(own, known), format)
    expect(lines(null, [])).toMatchObject({ says: expect.stringContaining('none yet'), missing: null, more: [] })
    expect(lines(null, [old])).toMatchObject({ says: 'It has none now.' })
    expect(lines(null, [old]).missing).toMatch(/^Key 77aa 04de 91bc 3f2a is not on this tablet\./)
    expect(lines(old.key, [old])).toEqual({
      says: 'Key 77aa 04de 91bc 3f2a, made on 3 Nov 2026.',
      missing: null,
      more: [],
    })
    expect(lines(key, [gone]).more).toEqual([
      'Earlier key 77aa 04de 91bc 3f2a: missing since 24 Nov 2026; what it signed still verifies.',
    ])
    expect(lines(key, [old]).more).toEqual(['Known of other tablets: 77aa 04de 91bc 3f2a.'])
  })
})
