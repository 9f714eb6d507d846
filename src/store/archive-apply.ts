import { type Event, inFoldOrder } from '../batch/event'
import { deviceRecord, isDeviceSigned } from '../batch/record-device'
import type { ArchivePreview, ArchiveWatch, Meeting } from '../ports/archive'
import { countKinds, meet, type StreamMeeting } from './archive-meet'
import { readArchive } from './archive-read'
import { Refused } from './archive-refused'
import type { ArchiveShelf } from './archive-shelf'
import { isFull, isStorageFault } from './faults'
import { nameOf } from './locate-damage'

const entriesAtOnce = 2_000

/** Meetings that are told one by one; beyond them only counts. */
const mostMeetings = 500

/** Reads and verifies a whole file, and says what it would bring. */
export async function inspectArchive(
  shelf: ArchiveShelf,
  file: Blob,
  watch: ArchiveWatch = {},
): Promise<ArchivePreview> {
  const tally = { fresh: 0, same: 0, conflicting: 0 }
  const streams: string[] = []
  const meetings: Meeting[] = []
  const gaps: { of: string; number: number }[] = []
  const signed: ArchivePreview['signed'][number][] = []
  const counts = countKinds()
  const look = async (stream: string, offered: readonly Event[]) => {
    const present = await shelf.read(stream)
    const found = meet(stream, present, offered)
    tally.fresh += found.fresh.length
    tally.same += found.same
    tally.conflicting += found.staysOut
    counts.add(found)
    if (isMeeting(found) && meetings.length < mostMeetings) meetings.push({ ...found, fresh: found.fresh.length })
    streams.push(stream)
    gaps.push(...gapsIn(stream, offered, present))
    signed.push(...signedIn(stream, present, found.fresh))
  }
  const header = await readArchive(file, look, { ...watch, hereOf: shelf.read })
  return { header, ...tally, streams, gaps, kinds: counts.kinds(), meetings, signed }
}

/** Entries whose chain leads to one that is nowhere. They are let in: what is left of a record is worth keeping. */
function gapsIn(stream: string, offered: readonly Event[], present: readonly Event[]): ArchivePreview['gaps'] {
  const known = new Set([...present, ...offered].map(({ hash }) => hash))
  const of = nameOf(stream, offered[0])
  return offered.flatMap(({ parents }, index) => {
    const follows = parents.every((parent) => known.has(parent)) && (index === 0 || parents.length > 0)
    return follows ? [] : [{ of, number: index + 1 }]
  })
}

/** What tablets signed among the new entries of a batch, in the batch as it would be. */
function signedIn(stream: string, present: readonly Event[], fresh: readonly Event[]): ArchivePreview['signed'] {
  if (!fresh.some(isDeviceSigned)) return []
  const ids = new Set(fresh.map(({ id }) => id))
  const all = [...present, ...fresh].sort(inFoldOrder)
  return deviceRecord(all)
    .rows.filter(({ entry }) => ids.has(entry))
    .map((row) => ({ ...row, of: nameOf(stream, all[0]) }))
}

const isMeeting = (found: StreamMeeting): found is StreamMeeting & Pick<Meeting, 'how'> =>
  found.how === 'both' || found.how === 'conflict'

/** Verifies the whole file, then adds in short transactions what is not here. What is here stays as it is. */
export async function applyArchive(
  shelf: ArchiveShelf,
  file: Blob,
  { onProgress, signal }: ArchiveWatch = {},
): Promise<ArchivePreview> {
  const part = (from: number) => (fraction: number) => onProgress?.(from + fraction / 2)
  const inspected = await inspectArchive(shelf, file, { onProgress: part(0), ...(signal ? { signal } : {}) })
  if (inspected.fresh === 0) return inspected
  const waiting = new Map<string, readonly Event[]>()
  let size = 0
  let done = 0
  const stopped = (cause: 'asked' | 'full' | 'refused') =>
    new Refused({ code: 'STOPPED', cause, done, of: inspected.fresh })
  const flush = async () => {
    if (signal?.aborted) throw stopped('asked')
    done += await shelf.add(waiting)
    waiting.clear()
    size = 0
  }
  await shelf.prepare()
  try {
    await readArchive(
      file,
      async (stream, offered) => {
        const { fresh } = meet(stream, await shelf.read(stream), offered)
        if (fresh.length > 0) waiting.set(stream, fresh)
        size += fresh.length
        if (size >= entriesAtOnce) await flush()
      },
      { onProgress: part(0.5) },
    )
    await flush()
  } catch (error) {
    if (done > 0 && isFull(error)) throw stopped('full')
    if (done > 0 && isStorageFault(error)) throw stopped('refused')
    throw error
  } finally {
    if (done > 0) await shelf.renewReplica()
  }
  return inspected
}
