import type { Event, Tip } from '../../../src/batch/event'
import { isIntact, seal } from '../../../src/batch/seal'
import { advance, emptyTip } from '../../../src/batch/tip'
import type { AppendRequest } from '../../../src/ports/event-log'
import { type BuiltStore, buildStore } from '../../../src/store/build-store'
import { journalFiles } from '../../../src/store/journal-files'
import { type Locks, pageLock } from '../../../src/store/locks'
import type { Pages } from '../../../src/store/pages'
import type { RestartableJournal } from '../../../src/store/second-copy'
import { type StateHolder, storageState } from '../../../src/store/storage-state'
import { type MemoryFolder, memoryFolder } from './memory-folder'

/** A tablet in memory: what outlives a page of it. The database is that of fake-indexeddb. */
export interface Tablet {
  readonly folder: MemoryFolder
  readonly locks: MemoryLocks
  nextId(): string
}

export interface MemoryLocks extends Locks {
  /** The page is gone: its locks are free. */
  release(pageId: string): void
}

export interface OpenPage {
  readonly store: BuiltStore
  readonly journal: FaultyJournal
  readonly state: StateHolder
  readonly pageId: string
  /** The page is killed. */
  kill(): void
}

export interface FaultyJournal extends RestartableJournal {
  /** Nothing works until `mend`. */
  breakDown(): void
  mend(): void
}

export function newTablet(): Tablet {
  let last = 0
  return {
    folder: memoryFolder(),
    locks: memoryLocks(),
    nextId: () => {
      last += 1
      return `id-${String(last).padStart(4, '0')}`
    },
  }
}

export const project = (_stream: string, events: readonly Event[]) => ({
  shelf: events.some((event) => event.kind === 'closed') ? 'closed' : 'open',
  summary: { entries: events.length },
})

const nobody: Pages = { tell: () => undefined, onMessage: () => undefined }

/** Opens the store as a page does, and waits until both copies are compared. */
export async function openPage(tablet: Tablet, pages: Pages = nobody): Promise<OpenPage> {
  const page = await openAtOnce(tablet, pages)
  await page.store.log.ready()
  return page
}

/** Opens the store as a page does, as far as the first screen needs it. */
export async function openAtOnce(tablet: Tablet, pages: Pages = nobody): Promise<OpenPage> {
  const pageId = tablet.nextId()
  const state = storageState()
  await tablet.locks.keep(pageLock(pageId))
  const journal = faultyJournal(tablet, pageId)
  const now = async () => '2026-03-02T09:00:00.000+01:00'
  const parts = {
    journal: Promise.resolve(journal),
    locks: tablet.locks,
    pageId,
    pages,
    state,
    loadProject: async () => project,
    newId: tablet.nextId,
    now,
    patienceMs: 300,
  }
  const store = await buildStore(parts)
  return {
    store,
    journal,
    state,
    pageId,
    kill: () => {
      journal.breakDown()
      tablet.locks.release(pageId)
      tablet.folder.revive()
      void store.connection.get().then(
        (db) => db.close(),
        () => undefined,
      )
    },
  }
}

function faultyJournal(tablet: Tablet, pageId: string): FaultyJournal {
  const damagedOf = async (events: readonly Event[]) => events.filter((event) => !isIntact(event)).map(({ id }) => id)
  let broken = false
  let incarnation = 0
  let state: 'open' | 'dead' = 'dead'
  let files = journalFiles({ folder: tablet.folder, locks: tablet.locks, pageId, incarnation: '0', damagedOf })
  const gone = () => new DOMException('The journal is broken', 'InvalidStateError')
  const whole = async <T>(work: () => Promise<T>): Promise<T> => {
    if (broken) {
      state = 'dead'
      throw gone()
    }
    return work()
  }
  return {
    start: async () => {
      if (broken) return false
      incarnation += 1
      files = journalFiles({
        folder: tablet.folder,
        locks: tablet.locks,
        pageId,
        incarnation: String(incarnation),
        damagedOf,
      })
      state = 'open'
      return true
    },
    state: () => state,
    breakDown: () => {
      broken = true
      state = 'dead'
    },
    mend: () => {
      broken = false
    },
    append: (texts) => whole(() => files.append(texts)),
    table: () => whole(() => files.table()),
    read: (streams) => whole(() => files.read(streams)),
    held: () => whole(() => files.held()),
    merge: () => whole(() => files.merge()),
    probe: () => whole(() => files.probe()),
    damagedOf,
  }
}

function memoryLocks(): MemoryLocks {
  const kept = new Set<string>()
  const turns = new Map<string, Promise<unknown>>()
  return {
    keep: async (name) => void kept.add(name),
    held: async () => new Set(kept),
    exclusive: (name, task) => {
      const turn = (turns.get(name) ?? Promise.resolve()).then(task, task)
      turns.set(name, turn)
      return turn
    },
    release: (pageId) => void kept.delete(pageLock(pageId)),
  }
}

export interface Written {
  readonly events: readonly Event[]
  readonly tip: Tip
}

/** Entries of one stream, one after the other, from `after` on. */
export function write(stream: string, count: number, replica = 'r1', after: Tip = emptyTip, kind = 'noted'): Written {
  const events: Event[] = []
  let tip = after
  for (let i = 0; i < count; i++) {
    const at = `2026-03-02T09:${String(tip.lamport % 60).padStart(2, '0')}:00.000+01:00`
    const event = seal({ kind, body: { text: `${stream} ${tip.next}` } }, tip, {
      stream,
      replica,
      id: `${stream}/${replica}/${tip.next}`,
      at,
      by: 'RK',
    })
    events.push(event)
    tip = advance(tip, event)
  }
  return { events, tip }
}

export const request = (events: readonly Event[]): AppendRequest => ({
  events,
  after: events[0]?.parents[0] ?? null,
  projection: () => project('', events),
})

export const idsOf = (events: readonly Event[]): readonly string[] => events.map((event) => event.id)
