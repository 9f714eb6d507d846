import { describe, expect, test } from 'vitest'
import { base64Of } from '../../../src/batch/base64'
import { keyIdOf } from '../../../src/batch/device-signature'
import { firstDifference } from '../../../src/batch/difference'
import type { Draft, Event } from '../../../src/batch/event'
import { type KeyBodies, keyStream } from '../../../src/batch/key-trail'
import type { Kind } from '../../../src/batch/kinds'
import { bodySchemas } from '../../../src/batch/schemas/bodies'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { isIntact, seal } from '../../../src/batch/seal'
import { advance, emptyTip } from '../../../src/batch/tip'
import { verifyTrail } from '../../../src/batch/verify-trail'
import { wholeSamples } from '../../support/whole-samples'

const kinds = Object.keys(bodySchemas) as Kind[]

const note: Draft = { kind: 'noted', body: { text: 'before and after' } }

/** A note, an entry of this kind with this body and every field of its envelope, and another note. */
function chainAround(kind: string, body: unknown, stream = 'batch:one'): readonly [Event, Event, Event] {
  const source = { kind: 'balance', raw: '12.34 g', instrumentId: 'balance-1' } as const
  const place = { stream, replica: 'tablet', at: '2026-11-24T10:00:00Z', by: 'person-rk' }
  const first = seal(note, emptyTip, { ...place, id: 'id-1' })
  const draft = { kind, body, source, occurredAt: '2026-11-24T09:30:00+01:00' }
  const event = seal(draft, advance(emptyTip, first), { ...place, id: 'id-2' })
  return [first, event, seal(note, advance(advance(emptyTip, first), event), { ...place, id: 'id-3' })]
}

const publicKey = base64Of(new Uint8Array([48, 89, 48, 19]))
const ofKeys: KeyBodies = { 'key-made': { publicKey }, 'key-lost': { why: 'missing', instead: 'another' } }

const everyBody: readonly { readonly kind: string; readonly body: unknown; readonly stream?: string }[] = [
  ...kinds.flatMap((kind) => wholeSamples(bodySchemas[kind]).map((body) => ({ kind, body }))),
  ...Object.entries(ofKeys).map(([kind, body]) => ({ kind, body, stream: keyStream(keyIdOf(publicKey) ?? '') })),
]

/** Every version of a thing that differs in one field: changed, left out, or with one more beside it. */
function changed(event: Event): readonly { readonly path: string; readonly value: Event }[] {
  // An entry with one field changed, as anybody could write it into a file.
  return [...changedIn(event, [])].map(({ path, value }) => ({ path, value: value as Event }))
}

function* changedIn(value: unknown, at: readonly string[]): Generator<{ path: string; value: unknown }> {
  const path = at.join('.')
  if (typeof value === 'string') yield { path, value: `${value} ` }
  else if (typeof value === 'number') yield { path, value: value + 1 }
  else if (typeof value === 'boolean') yield { path, value: !value }
  else if (Array.isArray(value)) {
    if (value.length > 0) yield { path: [...at, String(value.length - 1)].join('.'), value: value.slice(0, -1) }
    yield { path: [...at, String(value.length)].join('.'), value: [...value, 'more'] }
    for (const [index, each] of value.entries())
      for (const other of changedIn(each, [...at, String(index)]))
        yield { ...other, value: value.with(index, other.value) }
  } else if (typeof value === 'object' && value !== null) {
    yield { path: [...at, 'added'].join('.'), value: { ...value, added: 1 } }
    for (const [key, each] of Object.entries(value)) {
      const { [key]: _gone, ...rest } = value as Record<string, unknown>
      yield { path: [...at, key].join('.'), value: rest }
      for (const other of changedIn(each, [...at, key])) yield { ...other, value: { ...value, [key]: other.value } }
    }
  }
}

describe('tampering', () => {
  test('[E1] every field of every kind of entry, and of its envelope, is under its hash', () => {
    const tried = new Set<string>()
    for (const { kind, body, stream } of everyBody) {
      const [, event] = chainAround(kind, body, stream)
      expect(isIntact(event), kind).toBe(true)
      expect(faultInBody(event), kind).toBeNull()
      for (const { path, value } of changed(event)) {
        if (tried.has(`${kind} ${path}`)) continue
        tried.add(`${kind} ${path}`)
        if (isIntact(value)) expect.fail(`${kind}: ${path} is not under the hash`)
      }
    }
    expect(tried.size).toBeGreaterThan(1000)
  }, 30_000)

  test('[E86] a changed entry of a chain is located, and beside another copy its field as well', () => {
    const missed: string[] = []
    for (const { kind, body, stream } of everyBody.filter((each) => each.kind !== 'opened')) {
      const [first, event, last] = chainAround(kind, body, stream)
      for (const { path, value } of changed(event)) {
        const found = verifyTrail([first, value, last], [first, event, last])
        const isLocated = !found.intact && found.brokenAt === 2 && found.why === 'CHANGED' && found.field === path
        if (!isLocated) missed.push(`${kind} ${path}: ${JSON.stringify(found)}`)
      }
    }
    expect(missed).toEqual([])
  }, 30_000)

  test('[E86] without another copy the entry is located; that its hash was changed is told by the next one', () => {
    const [first, event, last] = chainAround('parked', { reason: 'lunch' })
    const other = { ...event, body: { reason: 'dinner' } }
    const found = verifyTrail([first, other, last])
    expect(found).toMatchObject({ intact: false, brokenAt: 2, kind: 'parked' })
    expect(found).not.toHaveProperty('field')
    expect(verifyTrail([first, { ...event, hash: '0'.repeat(64) }, last])).toMatchObject({ brokenAt: 2, field: 'hash' })
    expect(verifyTrail([first, last])).toMatchObject({ brokenAt: 2, why: 'MISSING_BEFORE' })
  })
})

describe('the first difference', () => {
  test('[E86] is named by its path', () => {
    const one = { a: 1, b: { c: ['x', { d: true }] } }
    expect(firstDifference(one, structuredClone(one))).toBeNull()
    expect(firstDifference(one, { ...one, a: 2 })).toBe('a')
    expect(firstDifference(one, { ...one, b: { c: ['x', { d: false }] } })).toBe('b.c.1.d')
    expect(firstDifference(one, { ...one, b: { c: ['x'] } })).toBe('b.c.1')
    expect(firstDifference(one, { ...one, e: null })).toBe('e')
  })
})
