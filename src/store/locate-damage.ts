import { firstDifference } from '../batch/difference'
import type { Event } from '../batch/event'
import { isKnown } from '../batch/kinds'
import { twinOf } from '../batch/verify-trail'
import type { DamagedEntry } from '../ports/archive'

/** Kinds and names that a damaged line may hold are shown no longer than this. */
const longestName = 60

/**
 * Which entry a damaged line of a file is: `before` are those of its stream that stand before it. The field is told by
 * the entry itself, or by the same entry as it stands here.
 */
export async function locate(
  value: unknown,
  before: readonly Event[],
  field: string | null,
  hereOf: (stream: string) => Promise<readonly Event[]>,
): Promise<DamagedEntry | null> {
  const [first] = before
  const stream = textAt(value, 'stream') ?? first?.stream
  if (stream === undefined) return null
  const follows = first?.stream === stream
  const found = field ?? (await fieldByTwin(value, stream, hereOf))
  return {
    number: follows ? before.length + 1 : 1,
    of: nameOf(stream, follows ? first : value),
    kind: (textAt(value, 'kind') ?? 'unreadable').slice(0, longestName),
    ...(found === null ? {} : { field: found.slice(0, longestName) }),
  }
}

async function fieldByTwin(value: unknown, stream: string, hereOf: (stream: string) => Promise<readonly Event[]>) {
  if (typeof value !== 'object' || value === null) return null
  // Only compared field by field; whatever is missing is a difference.
  const twin = twinOf(value as Event, await hereOf(stream))
  return twin === undefined ? null : firstDifference(twin, value)
}

/** A batch is known by its code, where its opening entry is at hand. */
export function nameOf(stream: string, opened: unknown): string {
  // Checked for what is read of it.
  const event = opened as Event | null
  const code = event && typeof event === 'object' && isKnown(event) && event.kind === 'opened' ? event.body?.code : null
  return (typeof code === 'string' ? code : stream).slice(0, longestName)
}

function textAt(value: unknown, key: string): string | undefined {
  if (typeof value !== 'object' || value === null) return undefined
  const text = Object.getOwnPropertyDescriptor(value, key)?.value
  return typeof text === 'string' ? text : undefined
}
