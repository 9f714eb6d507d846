import type { Event } from '../batch/event'
import type { HeldIntention } from '../ports/event-log'
import { crc32 } from './checksum'

/** What one line of the journal says. */
export type JournalEntry =
  | { readonly kind: 'event'; readonly event: Event }
  | { readonly kind: 'held'; readonly held: HeldIntention }
  | { readonly kind: 'released'; readonly id: string }

export interface JournalLine {
  readonly entry: JournalEntry
  /** The whole line with its checksum and line end. */
  readonly bytes: Uint8Array
}

export interface DecodedJournal {
  readonly lines: readonly JournalLine[]
  /** Lines whose checksum fails or whose meaning is unknown here, as they stand. */
  readonly unread: readonly Uint8Array[]
  /** The end of a file whose last line never got its line end. */
  readonly torn: Uint8Array | null
}

const lineEnd = 0x0a
const prefixBytes = 9 // eight hex digits and a space

export const eventText = (event: Event): string => JSON.stringify({ event })
export const heldText = (held: HeldIntention): string => JSON.stringify({ held })
export const releasedText = (id: string): string => JSON.stringify({ released: id })

/** `<crc32> <json>\n` */
export function encodeLine(text: string): Uint8Array {
  const json = new TextEncoder().encode(text)
  const line = new Uint8Array(prefixBytes + json.length + 1)
  new TextEncoder().encodeInto(`${crc32(json)} `, line)
  line.set(json, prefixBytes)
  line[line.length - 1] = lineEnd
  return line
}

/** Reads what can be read; the rest is handed back untouched, so that nobody needs to drop it. */
export function decodeJournal(bytes: Uint8Array): DecodedJournal {
  const lines: JournalLine[] = []
  const unread: Uint8Array[] = []
  let from = 0
  for (let end = bytes.indexOf(lineEnd); end !== -1; end = bytes.indexOf(lineEnd, from)) {
    const line = bytes.subarray(from, end + 1)
    const value = decodeLine(line)
    const entry = value === undefined ? null : meaningOf(value)
    if (entry) lines.push({ entry, bytes: line })
    else unread.push(line)
    from = end + 1
  }
  return { lines, unread, torn: from < bytes.length ? bytes.subarray(from) : null }
}

/** The JSON value of one whole line, `undefined` where the checksum does not hold. */
export function decodeLine(line: Uint8Array): unknown {
  const json = line.subarray(prefixBytes, line.length - 1)
  const written = new TextDecoder().decode(line.subarray(0, prefixBytes))
  if (written !== `${crc32(json)} `) return undefined
  try {
    return JSON.parse(new TextDecoder().decode(json))
  } catch {
    return undefined
  }
}

function meaningOf(value: unknown): JournalEntry | null {
  if (typeof value !== 'object' || value === null) return null
  // The checksum says that this program wrote the line, and it writes whole events and intentions only.
  if ('event' in value) return { kind: 'event', event: value.event as Event }
  if ('held' in value) return { kind: 'held', held: value.held as HeldIntention }
  if ('released' in value && typeof value.released === 'string') return { kind: 'released', id: value.released }
  return null
}
