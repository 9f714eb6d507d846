import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import * as v from 'valibot'
import type { ArchiveHeader } from '../ports/archive'
import { Refused } from './archive-refused'

const archiveVersion = 1

/** Greatest counts and file (bytes) that are read. */
export const archiveCaps = { fileBytes: 512 * 1024 * 1024, events: 5_000_000, streams: 200_000 }

const count = v.pipe(v.number(), v.integer(), v.minValue(0))
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))

/** Strict, so that a changed letter in a field's name is noticed too: a header with more fields has another version. */
const headerSchema = v.strictObject({
  format: v.literal('pannikin'),
  version: v.pipe(count, v.minValue(1)),
  madeAt: v.pipe(v.string(), v.maxLength(200)),
  streams: v.pipe(count, v.maxValue(archiveCaps.streams)),
  events: v.pipe(count, v.maxValue(archiveCaps.events)),
  sha256: hash,
  own: v.exactOptional(hash),
})

export function headerOf(madeAt: string, counts: { streams: number; events: number; sha256: string }): ArchiveHeader {
  const header = { format: 'pannikin' as const, version: archiveVersion, madeAt, ...counts }
  return { ...header, own: ownHashOf(header) }
}

/** The header of a first line; throws where it is none, a newer one, or not as it was written. */
export function readHeader(value: unknown): ArchiveHeader {
  const named = v.safeParse(v.object({ format: v.literal('pannikin'), version: count }), value)
  if (!named.success) throw new Refused({ code: 'FILE_FOREIGN' })
  if (named.output.version > archiveVersion) throw new Refused({ code: 'FILE_NEWER', version: named.output.version })
  const header = v.safeParse(headerSchema, value)
  if (!header.success) throw new Refused({ code: 'FILE_DAMAGED', line: 1 })
  const { own, ...rest } = header.output
  if (own === undefined) return rest
  if (own !== ownHashOf(rest)) throw new Refused({ code: 'FILE_DAMAGED', line: 1 })
  return header.output
}

function ownHashOf({ format, version, madeAt, streams, events, sha256: lines }: ArchiveHeader): string {
  const text = JSON.stringify([format, version, madeAt, streams, events, lines])
  return bytesToHex(sha256(utf8ToBytes(text)))
}
