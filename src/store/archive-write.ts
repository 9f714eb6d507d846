import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { type Event, inFoldOrder } from '../batch/event'
import type { Archive, ArchiveHeader } from '../ports/archive'
import { ofStream } from './append'
import type { ArchiveParts } from './archive-parts'
import type { Connection } from './connection'

export const archiveVersion = 1
const blobEveryCharacters = 4_000_000

/** Streams to a file: a header line, then entries, one JSON a line, by stream name and fold order. */
export async function writeArchive(
  { connection }: { readonly connection: Connection },
  wanted: readonly string[] | 'all',
  madeAt: string,
): Promise<Blob> {
  const known = await connection.run((db) => db.getAllKeys('heads'))
  const streams = wanted === 'all' ? known : known.filter((stream) => wanted.includes(stream))
  const digest = sha256.create()
  const parts: Blob[] = []
  let lines = ''
  let count = 0
  const flush = () => {
    digest.update(utf8ToBytes(lines))
    parts.push(new Blob([lines]))
    lines = ''
  }
  for (const stream of streams) {
    const events = await connection.run((db) => db.getAll('events', ofStream(stream)))
    count += events.length
    for (const event of events.sort(inFoldOrder)) lines += lineOf(event)
    if (lines.length > blobEveryCharacters) flush()
  }
  flush()
  const header: ArchiveHeader = {
    format: 'pannikin',
    version: archiveVersion,
    madeAt,
    streams: streams.length,
    events: count,
    sha256: bytesToHex(digest.digest()),
  }
  return new Blob([`${JSON.stringify(header)}\n`, ...parts], { type: 'application/x-ndjson' })
}

const lineOf = (event: Event): string => `${JSON.stringify(event)}\n`

export const secondCopy = (
  { journal }: Pick<ArchiveParts, 'journal'>,
  stream: string,
): ReturnType<Archive['secondCopy']> =>
  journal.read([stream]).then(
    ([events]) => [...(events ?? [])].sort(inFoldOrder),
    () => null,
  )
