import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { type Event, inFoldOrder } from '../batch/event'
import type { ArchiveHeader, ArchiveWatch } from '../ports/archive'
import { faultIn } from './archive-entry'
import { archiveCaps, readHeader } from './archive-header'
import { goOnUnless, Refused } from './archive-refused'
import { locate } from './locate-damage'
import { readLines, TooLong } from './read-lines'

interface ReadOptions extends ArchiveWatch {
  /** What stands here of a stream: to tell by it what was changed in an entry. */
  readonly hereOf?: (stream: string) => Promise<readonly Event[]>
}

/**
 * Reads a whole file, verifying as it goes, and hands over stream by stream. Only when this resolves is the file known
 * to be whole; until then nothing that `onStream` was given may be applied, unless the file was read before.
 */
export async function readArchive(
  file: Blob,
  onStream: (stream: string, events: readonly Event[]) => Promise<void>,
  { onProgress, signal, hereOf = async () => [] }: ReadOptions = {},
): Promise<ArchiveHeader> {
  if (file.size > archiveCaps.fileBytes) throw new Refused({ code: 'FILE_TOO_LARGE', bytes: file.size })
  const digest = sha256.create()
  const tally = { line: 0, events: 0, streams: 0 }
  let header: ArchiveHeader | null = null
  let current: Event[] = []
  const finishStream = async () => {
    const stream = current[0]?.stream
    if (stream === undefined) return
    goOnUnless(signal)
    await onStream(stream, current)
    current = []
    if (header) onProgress?.(tally.events / Math.max(header.events, 1))
  }
  const take = async (event: Event) => {
    const last = current.at(-1)
    if (!last || last.stream !== event.stream) {
      if (last && last.stream >= event.stream) throw damaged(tally.line)
      await finishStream()
      tally.streams += 1
    } else if (inFoldOrder(last, event) >= 0) throw damaged(tally.line)
    current.push(event)
    tally.events += 1
  }
  try {
    for await (const { text, ended } of readLines(file)) {
      tally.line += 1
      const value = parse(text)
      if (!header) {
        header = readHeader(value)
        continue
      }
      // A last line without its end that makes no sense is where the file was cut off.
      if (!ended && value === undefined && tally.events < header.events) break
      digest.update(utf8ToBytes(`${text}\n`))
      const fault = faultIn(value)
      if (fault) {
        const entry = await locate(value, current, fault.field, hereOf)
        throw new Refused({ code: 'FILE_DAMAGED', line: tally.line, ...(entry && { entry }) })
      }
      // It was checked just now, as it came.
      await take(value as Event)
    }
  } catch (error) {
    if (error instanceof TooLong || error instanceof TypeError) throw header ? damaged(tally.line + 1) : foreign()
    throw error
  }
  if (!header) throw foreign()
  if (tally.events < header.events)
    throw new Refused({ code: 'FILE_CUT', expected: header.events, found: tally.events })
  const isWhole = bytesToHex(digest.digest()) === header.sha256 && tally.streams === header.streams
  if (!isWhole || tally.events !== header.events) throw damaged(await firstUnusual(file))
  await finishStream()
  return header
}

const foreign = () => new Refused({ code: 'FILE_FOREIGN' })
const damaged = (line: number) => new Refused({ code: 'FILE_DAMAGED', line })

/** The first line that says what it says in other letters than this app writes; else it is the header that is wrong. */
async function firstUnusual(file: Blob): Promise<number> {
  let line = 0
  for await (const { text } of readLines(file)) {
    line += 1
    if (line > 1 && JSON.stringify(parse(text)) !== text) return line
  }
  return 1
}

function parse(line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    return undefined
  }
}
