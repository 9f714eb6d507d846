import * as v from 'valibot'
import type { Event } from '../batch/event'
import { faultInBody } from '../batch/schemas/sound-body'
import { hashOf } from '../batch/seal'
import { longestLineCharacters } from './read-lines'

const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const text = v.pipe(v.string(), v.maxLength(200))
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

/** The envelope; bodies are checked by their kind, and unknown kinds are kept. */
const envelopeSchema = v.looseObject({
  v: count,
  stream: v.pipe(text, v.regex(/^[a-z][a-z-]*:.+$/)),
  replica: v.pipe(text, v.minLength(1)),
  n: count,
  id: v.pipe(text, v.minLength(1)),
  parents: v.pipe(v.array(hash), v.maxLength(100)),
  lamport: count,
  kind: v.pipe(text, v.minLength(1)),
  at: v.pipe(
    text,
    v.check((at) => !Number.isNaN(Date.parse(at))),
  ),
  occurredAt: v.optional(text),
  by: text,
  source: v.looseObject({ kind: v.picklist(['typed', 'balance', 'scan', 'simulated']) }),
  hash,
})

/** The line of an entry, or null for a damaged one: no app would take a file with it. */
export function lineOf(event: Event): string | null {
  const line = JSON.stringify(event)
  return line.length <= longestLineCharacters && faultIn(event) === null ? `${line}\n` : null
}

/** What is wrong with an entry; with the field, where that is plain from the entry alone. */
export function faultIn(value: unknown): { readonly field: string | null } | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return { field: null }
  const checked = v.safeParse(envelopeSchema, value)
  if (!checked.success) return { field: v.getDotPath(checked.issues[0]) }
  if (!('body' in value)) return { field: 'body' }
  // The envelope is checked; what the hash covers is the entry as it came, with every field it has.
  const event = value as Event
  try {
    if (hashOf(event) !== event.hash) return { field: null }
    const field = faultInBody(event)
    return field === null ? null : { field }
  } catch {
    // Nested too deeply, or no JSON value of RFC 8785.
    return { field: null }
  }
}
