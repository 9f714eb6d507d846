import type { Event } from '../batch/event'
import { emptySum, mixSum } from './checksum'
import { type JournalFolder, type JournalHandle, joinBytes, writeThrough } from './journal-folder'
import { type DecodedJournal, decodeJournal, encodeLine } from './journal-line'
import { type Manifest, manifestOf, readSlots } from './journal-manifest'
import { mergeFiles, removeFiles } from './journal-merge'
import type { Journal, StreamSum } from './journal-port'
import { type Locks, pageLock } from './locks'

/** One page's journal over a folder of files: appends to its own file, reads everybody's. */
export interface JournalFilesOptions {
  readonly folder: JournalFolder
  readonly locks: Locks
  readonly pageId: string
  /** Tells apart the files of one page whose worker was started again. */
  readonly incarnation: string
  readonly damagedOf: (events: readonly Event[]) => Promise<readonly string[]>
}

const ownFileFullBytes = 4 * 1024 * 1024
const mergeShareBytes = 8 * 1024 * 1024
const segmentsLock = 'journal:segments'
const isPageFile = (name: string): boolean => name.startsWith('page.')
const pageOf = (name: string): string => name.split('.')[1] ?? ''

export function journalFiles({ folder, locks, pageId, incarnation, damagedOf }: JournalFilesOptions): Journal {
  // What cannot be merged now is merged when the house is kept: the lines stand where they are.
  const own = ownFile(folder, `page.${pageId}.${incarnation}`, () => void merge().catch(() => undefined))
  const decoded = new Map<string, { size: number; content: DecodedJournal }>()

  /** Files only grow, so an equal size is an equal content. */
  async function contentOf(name: string): Promise<DecodedJournal> {
    const known = decoded.get(name)
    if (known && known.size === (await folder.size(name))) return known.content
    const bytes = await folder.read(name)
    const content = decodeJournal(bytes)
    decoded.set(name, { size: bytes.length, content })
    return content
  }

  async function listing() {
    const slots = readSlots(folder)
    const names = await folder.list()
    // After the names: a page has its lock before it has a file.
    const [held, { manifest, packed }] = await Promise.all([
      locks.held(),
      slots.then((found) => manifestOf(folder, names, found)),
    ])
    const pages = names
      .filter((name) => isPageFile(name) && !manifest.merged.includes(name))
      .map((name) => ({ name, gone: isGone(name, held) }))
    return { names, manifest, packed, pages }
  }

  async function survey() {
    const { manifest, packed, pages } = await listing()
    const contents = await Promise.all(pages.map(async (page) => ({ ...page, content: await contentOf(page.name) })))
    return { manifest, packed, contents }
  }

  const isGone = (name: string, held: ReadonlySet<string>): boolean =>
    pageOf(name) === pageId ? name !== own.name() : !held.has(pageLock(pageOf(name)))

  async function packedOf(manifest: Manifest, streams: ReadonlySet<string>): Promise<Event[]> {
    const events: Event[] = []
    for (const row of manifest.streams) {
      if (!streams.has(row.stream)) continue
      for (const { pack, at, bytes } of row.segments) {
        for (const { entry } of decodeJournal(await folder.read(pack, at, bytes)).lines)
          if (entry.kind === 'event') events.push(entry.event)
      }
    }
    return events
  }

  /** Merges a bounded share of the files that are free; a start that is cut off keeps what it has done. */
  const mergeShare = () =>
    locks.exclusive(segmentsLock, async () => {
      const { manifest, packed, names, pages } = await listing()
      const stuck = await removeFiles(
        folder,
        manifest.merged.filter((name) => names.includes(name)),
      )
      const free = pages.filter((page) => page.gone).map((page) => page.name)
      const share: string[] = []
      for (let bytes = 0; share.length < free.length && bytes < mergeShareBytes; ) {
        const name = free[share.length] ?? ''
        bytes += await folder.size(name)
        share.push(name)
      }
      const contents = await Promise.all(share.map(contentOf))
      const lines = contents.flatMap((content) => content.lines)
      const streams = new Set(lines.flatMap(({ entry }) => (entry.kind === 'event' ? [entry.event.stream] : [])))
      const known = new Set((await packedOf(manifest, streams)).map((event) => event.hash))
      const unread = contents.flatMap((content) => [...content.unread, ...(content.torn ? [content.torn] : [])])
      const moved = await mergeFiles(
        folder,
        manifest,
        { names: share, lines, unread, stuck, isRebuilt: packed !== null },
        known,
      )
      for (const name of share) decoded.delete(name)
      return { moved, isDone: share.length === free.length }
    })

  async function merge(): Promise<number> {
    for (let sum = 0; ; ) {
      const { moved, isDone } = await mergeShare()
      sum += moved
      if (isDone || moved === 0) return sum
    }
  }

  return {
    append: (texts) => own.append(joinBytes(texts.map(encodeLine))),

    table: () =>
      locks.exclusive(segmentsLock, async () => {
        const { manifest, packed, contents } = await survey()
        const lines = contents.flatMap(({ content }) => content.lines)
        const events = lines.flatMap(({ entry }) => (entry.kind === 'event' ? [entry.event] : []))
        return {
          streams: addTails(manifest, packed, events),
          torn: contents.filter(({ gone, content }) => gone && content.torn !== null).length,
          damaged: contents.reduce((sum, { content }) => sum + content.unread.length, 0),
        }
      }),

    read: (streams) =>
      locks.exclusive(segmentsLock, async () => {
        const { manifest, contents } = await survey()
        const byStream = new Map(streams.map((stream) => [stream, new Map<string, Event>()]))
        for (const event of await packedOf(manifest, new Set(streams)))
          byStream.get(event.stream)?.set(event.hash, event)
        for (const { content } of contents)
          for (const { entry } of content.lines)
            if (entry.kind === 'event') byStream.get(entry.event.stream)?.set(entry.event.hash, entry.event)
        return streams.map((stream) => [...(byStream.get(stream)?.values() ?? [])])
      }),

    held: () =>
      locks.exclusive(segmentsLock, async () => {
        const { manifest, contents } = await survey()
        const entries = contents.flatMap(({ content }) => content.lines.map(({ entry }) => entry))
        const released = new Set([
          ...manifest.released,
          ...entries.flatMap((one) => (one.kind === 'released' ? [one.id] : [])),
        ])
        const held = [...manifest.held, ...entries.flatMap((one) => (one.kind === 'held' ? [one.held] : []))]
        return held.filter((one) => !released.has(one.id))
      }),

    merge,
    probe: () => own.probe(),
    damagedOf,
  }
}

function addTails(
  manifest: Manifest,
  packed: ReadonlySet<string> | null,
  events: readonly Event[],
): readonly StreamSum[] {
  const rows = new Map<string, StreamSum>(
    manifest.streams.map(({ stream, count, sum }) => [stream, { stream, count, sum }]),
  )
  const seen = new Set(packed)
  for (const { stream, hash } of events) {
    if (seen.has(hash)) continue
    seen.add(hash)
    const row = rows.get(stream)
    rows.set(stream, { stream, count: (row?.count ?? 0) + 1, sum: mixSum(row?.sum ?? emptySum, hash) })
  }
  return [...rows.values()]
}

/** The file this page appends to. After a write that failed nothing more is put behind it: another file is begun. */
function ownFile(folder: JournalFolder, stem: string, onFull: () => void) {
  let part = 0
  let handle: JournalHandle | null = null
  let turn: Promise<unknown> = Promise.resolve()
  const name = () => `${stem}-${part}.log`

  const inTurn = (task: () => Promise<void>): Promise<void> => {
    const next = turn.then(task)
    turn = next.catch(() => undefined)
    return next
  }
  const leave = () => {
    try {
      handle?.close()
    } catch {
      // A handle that died in a suspension cannot be closed, and need not be.
    }
    handle = null
    part += 1
  }
  const write = async (bytes: Uint8Array) => {
    handle ??= await folder.open(name())
    const at = handle.getSize()
    writeThrough(handle, bytes, at)
    if (at + bytes.length < ownFileFullBytes) return
    leave()
    onFull()
  }
  return {
    name,
    append: (bytes: Uint8Array) =>
      inTurn(async () => {
        try {
          await write(bytes)
        } catch {
          leave()
          await write(bytes)
        }
      }),
    probe: () =>
      inTurn(async () => {
        try {
          // A page that writes nothing leaves no file behind.
          if (handle) handle.getSize()
          else await folder.list()
        } catch {
          leave()
          handle = await folder.open(name())
        }
      }),
  }
}
