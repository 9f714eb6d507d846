import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import * as v from 'valibot'
import { type Event, inFoldOrder } from '../batch/event'
import { faultInBody } from '../batch/schemas/sound-body'
import { hashOf } from '../batch/seal'
import type { ArchiveHeader, ArchiveRefusal } from '../ports/archive'
import { archiveVersion } from './archive-write'
import { locate } from './locate-damage'
import { readLines, TooLong } from './read-lines'

/** Greatest file, line (bytes) and counts that are read. */
export const archiveCaps = { fileBytes: 512 * 1024 * 1024, events: 5_000_000, streams: 200_000 }

const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const text = v.pipe(v.string(), v.maxLength(200))
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

const headerSchema = v.object({
  format: v.literal('pannikin'),
  version: v.pipe(count, v.minValue(1)),
  madeAt: text,
  streams: v.pipe(count, v.maxValue(archiveCaps.streams)),
  events: v.pipe(count, v.maxValue(archiveCaps.events)),
  sha256: hash,
})

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

/** Thrown inside the reading of a file, and turned into a result at its edge. */
export class Refused extends Error {
  constructor(readonly refusal: ArchiveRefusal) {
    super(refusal.code)
  }
}

/**
 * Reads a whole file, verifying as it goes, and hands over stream by stream. Only when this resolves is the file known
 * to be whole; until then nothing that `onStream` was given may be applied, unless the file was read before.
 */
export async function readArchive(
  file: Blob,
  onStream: (stream: string, events: readonly Event[]) => Promise<void>,
  hereOf: (stream: string) => Promise<readonly Event[]> = async () => [],
): Promise<ArchiveHeader> {
  if (file.size > archiveCaps.fileBytes) throw new Refused({ code: 'FILE_TOO_LARGE', bytes: file.size })
  const digest = sha256.create()
  const tally = { line: 0, events: 0, streams: 0 }
  let header: ArchiveHeader | null = null
  let current: Event[] = []
  const finishStream = async () => {
    const stream = current[0]?.stream
    if (stream !== undefined) await onStream(stream, current)
    current = []
  }
  try {
    for await (const line of readLines(file)) {
      tally.line += 1
      if (!header) {
        header = readHeader(line)
        continue
      }
      digest.update(utf8ToBytes(`${line}\n`))
      const value = parse(line)
      const fault = faultIn(value)
      if (fault) {
        const entry = await locate(value, current, fault.field, hereOf)
        throw new Refused({ code: 'FILE_DAMAGED', line: tally.line, ...(entry && { entry }) })
      }
      // The envelope is checked; what the hash covers is the entry as it came, with every field it has.
      const event = value as Event
      const last = current.at(-1)
      if (!last || last.stream !== event.stream) {
        if (last && last.stream >= event.stream) throw damaged(tally.line)
        await finishStream()
        tally.streams += 1
      } else if (inFoldOrder(last, event) >= 0) throw damaged(tally.line)
      current.push(event)
      tally.events += 1
    }
  } catch (error) {
    if (error instanceof TooLong || error instanceof TypeError) throw header ? damaged(tally.line + 1) : foreign()
    throw error
  }
  if (!header) throw foreign()
  if (tally.events < header.events)
    throw new Refused({ code: 'FILE_CUT', expected: header.events, found: tally.events })
  const isWhole = bytesToHex(digest.digest()) === header.sha256 && tally.streams === header.streams
  if (!isWhole || tally.events !== header.events) throw damaged(1)
  await finishStream()
  return header
}

const foreign = () => new Refused({ code: 'FILE_FOREIGN' })
const damaged = (line: number) => new Refused({ code: 'FILE_DAMAGED', line })

function readHeader(line: string): ArchiveHeader {
  const value = parse(line)
  const named = v.safeParse(v.object({ format: v.literal('pannikin'), version: count }), value)
  if (!named.success) throw foreign()
  if (named.output.version > archiveVersion) throw new Refused({ code: 'FILE_NEWER', version: named.output.version })
  const header = v.safeParse(headerSchema, value)
  if (!header.success) throw damaged(1)
  return header.output
}

/** What is wrong with an entry; with the field, where that is plain from the entry alone. */
function faultIn(value: unknown): { readonly field: string | null } | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return { field: null }
  const checked = v.safeParse(envelopeSchema, value)
  if (!checked.success) return { field: v.getDotPath(checked.issues[0]) }
  if (!('body' in value)) return { field: 'body' }
  // As above: an entry as it came.
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

function parse(line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    return undefined
  }
}
