import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { inFoldOrder } from '../batch/event'
import { isKnown } from '../batch/kinds'
import { pictureStream } from '../batch/picture'
import type { ArchiveHeader, ArchiveWatch, WrittenArchive } from '../ports/archive'
import { lineOf } from './archive-entry'
import { headerOf } from './archive-header'
import { goOnUnless, Refused } from './archive-refused'
import type { ArchiveShelf } from './archive-shelf'

/** Text that is held before it becomes a piece of the file, which browsers put on disk. */
const pieceCharacters = 1_000_000

/** Of the way: the rest is reading back. */
const writing = 0.7

/**
 * Streams to a file: a header line, then entries, one JSON a line, by stream name and fold order. The file is read back
 * and compared before it is handed over.
 */
export async function writeArchive(
  shelf: ArchiveShelf,
  wanted: readonly string[] | 'all',
  madeAt: string,
  { onProgress, signal }: ArchiveWatch = {},
): Promise<WrittenArchive> {
  const known = await shelf.streams()
  const leaving = new Set(wanted === 'all' ? known : [...wanted, ...(await picturesOf(shelf, wanted))])
  const streams = known.filter((stream) => leaving.has(stream))
  const digest = sha256.create()
  const pieces: Blob[] = []
  const tally = { entries: 0, streams: 0, batches: 0, leftOut: 0 }
  let lines = ''
  const flush = () => {
    digest.update(utf8ToBytes(lines))
    pieces.push(new Blob([lines]))
    lines = ''
  }
  for (const [index, stream] of streams.entries()) {
    goOnUnless(signal)
    const before = tally.entries
    for (const event of [...(await shelf.read(stream))].sort(inFoldOrder)) {
      const line = lineOf(event)
      if (line === null) tally.leftOut += 1
      else tally.entries += 1
      lines += line ?? ''
      if (lines.length >= pieceCharacters) flush()
    }
    if (tally.entries > before) {
      tally.streams += 1
      if (stream.startsWith('batch:')) tally.batches += 1
    }
    onProgress?.((writing * (index + 1)) / streams.length)
  }
  flush()
  const header = headerOf(madeAt, {
    streams: tally.streams,
    events: tally.entries,
    sha256: bytesToHex(digest.digest()),
  })
  const file = new Blob([`${JSON.stringify(header)}\n`, ...pieces], { type: 'application/x-ndjson' })
  await readBack(file, header, (part) => onProgress?.(writing + (1 - writing) * part), signal)
  return { file, ...tally }
}

/** A batch takes the pictures along that it names. */
async function picturesOf(shelf: ArchiveShelf, streams: readonly string[]): Promise<readonly string[]> {
  const found: string[] = []
  for (const stream of streams.filter((each) => each.startsWith('batch:'))) {
    for (const event of await shelf.read(stream))
      if (isKnown(event) && event.kind === 'pictured') found.push(pictureStream(event.body.picture))
  }
  return found
}

/** Every entry was checked when its line was made; what is compared here is that the file holds these lines. */
async function readBack(
  file: Blob,
  header: ArchiveHeader,
  onProgress: (fraction: number) => void,
  signal: AbortSignal | undefined,
): Promise<void> {
  const entries = file.slice(utf8ToBytes(JSON.stringify(header)).length + 1)
  const digest = sha256.create()
  const reader = entries.stream().getReader()
  let bytes = 0
  let ends = 0
  for (;;) {
    goOnUnless(signal)
    const { done, value } = await reader.read()
    if (done) break
    digest.update(value)
    bytes += value.length
    for (let at = value.indexOf(lineEnd); at >= 0; at = value.indexOf(lineEnd, at + 1)) ends += 1
    onProgress(bytes / entries.size)
  }
  if (ends !== header.events || bytesToHex(digest.digest()) !== header.sha256)
    throw new Refused({ code: 'FILE_NOT_VERIFIED' })
}

const lineEnd = 0x0a
