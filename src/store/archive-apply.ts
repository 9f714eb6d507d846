import type { Event } from '../batch/event'
import type { ArchivePreview, ArchiveRefusal } from '../ports/archive'
import { accept, type Result, refuse } from '../trade/result'
import { addMissing, compareEntries } from './add-missing'
import { ofStream } from './append'
import type { ArchiveParts } from './archive-parts'
import { Refused, readArchive } from './archive-read'
import { isFull, isStorageFault } from './faults'
import { nameOf } from './locate-damage'

type Answer = Result<ArchivePreview, ArchiveRefusal>

const entriesAtOnce = 2_000

/** Reads and verifies a whole file, and says what it would bring. */
export function inspectArchive({ connection }: ArchiveParts, file: Blob): Promise<Answer> {
  return asResult(async () => {
    const tally = { fresh: 0, same: 0, conflicting: 0 }
    const streams: string[] = []
    const gaps: { of: string; number: number }[] = []
    const hereOf = (stream: string) => connection.run((db) => db.getAll('events', ofStream(stream)))
    const onStream = async (stream: string, offered: readonly Event[]) => {
      const present = await hereOf(stream)
      const { fresh, same, conflicting } = compareEntries(present, offered)
      tally.fresh += fresh.length
      tally.same += same
      tally.conflicting += conflicting
      streams.push(stream)
      gaps.push(...gapsIn(stream, offered, present))
    }
    const header = await readArchive(file, onStream, hereOf)
    return { header, ...tally, streams, gaps }
  })
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

/** Verifies the whole file, then adds in short transactions what is not here. What is here stays as it is. */
export async function applyArchive(parts: ArchiveParts, file: Blob): Promise<Answer> {
  const inspected = await inspectArchive(parts, file)
  if (!inspected.ok || inspected.value.fresh === 0) return inspected
  return asResult(async () => {
    const waiting = new Map<string, readonly Event[]>()
    let size = 0
    const flush = async () => {
      await applyChunk(parts, waiting)
      waiting.clear()
      size = 0
    }
    await parts.databaseWhole()
    await readArchive(file, async (stream, events) => {
      waiting.set(stream, events)
      size += events.length
      if (size >= entriesAtOnce) await flush()
    })
    await flush()
    return inspected.value
  })
}

async function applyChunk(
  { connection, loadProject, second, onDurable }: ArchiveParts,
  streams: ReadonlyMap<string, readonly Event[]>,
): Promise<void> {
  const project = await loadProject()
  const { added } = await connection.run((db) => addMissing(db, streams, project))
  if (added.length === 0) return
  await second.write(added)
  onDurable(added)
}

async function asResult(work: () => Promise<ArchivePreview>): Promise<Answer> {
  try {
    return accept(await work())
  } catch (error) {
    if (error instanceof Refused) return refuse(error.refusal)
    if (isFull(error)) return refuse({ code: 'STORAGE_FULL' })
    // A file that changed or went away while it was read is cut, as far as anybody can tell.
    if (error instanceof DOMException && error.name === 'NotReadableError')
      return refuse({ code: 'FILE_DAMAGED', line: 0 })
    if (isStorageFault(error)) return refuse({ code: 'STORAGE_REFUSED' })
    throw error
  }
}
