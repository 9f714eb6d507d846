import { type Event, inFoldOrder } from '../batch/event'
import type { Archive } from '../ports/archive'
import type {
  AppendAnswer,
  AppendRequest,
  Drafts,
  EntryState,
  EventLog,
  HeldIntention,
  StorageState,
} from '../ports/event-log'
import { archiveOf } from './archive'
import { orderOf, toHead } from './head-list'
import { headAfter, headOf, type Project } from './head-row'
import { listeners } from './listeners'
import type { HeadRow } from './schema'

/** How the twin behaves from now on: `fail-database` holds, `fail-journal` leaves one copy, and so on. */
export type Mood = 'well' | 'fail-journal' | 'fail-database' | 'full' | 'fail-both'

export interface MemoryStore {
  readonly log: EventLog
  readonly drafts: Drafts
  readonly archive: Archive
  setMood(mood: Mood): void
  /** Entries as if another page had appended them. */
  receive(request: AppendRequest): void
}

/** What it makes of streams that come in by a file, unless told otherwise. */
const plainly: Project = () => ({ shelf: 'here', summary: null })

/** The twin of the durable store: the same answers to the same requests, kept in memory. */
export function memoryStore(firstReplica: string, project = plainly): MemoryStore {
  const streams = new Map<string, Event[]>()
  const rows = new Map<string, HeadRow>()
  const held = new Map<string, HeldIntention>()
  const appended = listeners<[readonly Event[], 'this-page' | 'another-page']>()
  const moved = listeners<[readonly string[], EntryState]>()
  const changed = listeners<[StorageState]>()
  const behind: string[] = []
  let mood: Mood = 'well'
  let replica = firstReplica

  const databaseWorks = () => mood === 'well' || mood === 'fail-journal'
  const journalWorks = () => mood === 'well' || mood === 'fail-database'
  const state = (): StorageState => ({
    database: databaseWorks() || mood === 'full' ? 'open' : 'dead',
    journal: journalWorks() ? 'open' : 'dead',
    persisted: true,
    usedBytes: mood === 'full' ? 1_000_000 : 0,
    quotaBytes: 1_000_000,
    compared: true,
  })

  function write(request: AppendRequest): 'written' | 'conflict' {
    const [first] = request.events
    if (!first) return 'written'
    const events = streams.get(first.stream) ?? []
    const row = rows.get(first.stream)
    if ((row?.hash ?? null) !== request.after)
      return events.some(({ hash }) => hash === first.hash) ? 'written' : 'conflict'
    streams.set(first.stream, [...events, ...request.events])
    const next = headAfter(row, request.events, request.projection())
    if (next) rows.set(first.stream, next)
    return 'written'
  }

  function append(request: AppendRequest): AppendAnswer {
    if (mood === 'full') return { state: 'not-saved', reason: 'STORAGE_FULL' }
    if (mood === 'fail-both') return { state: 'not-saved', reason: 'STORAGE_REFUSED' }
    if (mood === 'fail-database') return { state: 'held' }
    if (write(request) === 'conflict') return { state: 'conflict' }
    if (mood === 'fail-journal') behind.push(...request.events.map((event) => event.id))
    appended.tell(request.events, 'this-page')
    return { state: mood === 'fail-journal' ? 'one-copy' : 'recorded' }
  }

  const archive = archiveOf({
    streams: async () => [...streams.keys()].sort(),
    read: async (stream) => streams.get(stream) ?? [],
    readSecond: async (stream) => streams.get(stream) ?? [],
    prepare: async () => undefined,
    add: async (offered) => {
      if (!databaseWorks()) throw new DOMException('no room', 'QuotaExceededError')
      const added = [...offered.values()].flat()
      for (const [stream, events] of offered) {
        const all = [...(streams.get(stream) ?? []), ...events]
        streams.set(stream, all)
        const row = headOf(stream, all, project)
        if (row) rows.set(stream, row)
      }
      appended.tell(added, 'this-page')
      return added.length
    },
    renewReplica: async () => {
      replica = `${replica}'`
    },
  })

  const log: EventLog = {
    get replica() {
      return replica
    },
    read: async (stream) => [...(streams.get(stream) ?? [])].sort(inFoldOrder),
    append: async (request) => append(request),
    hold: async (intention) => {
      if (!journalWorks()) return 'not-saved'
      held.set(intention.id, intention)
      return 'held'
    },
    heldIntentions: async () => [...held.values()],
    releaseHeld: async (id) => void held.delete(id),
    heads: async ({ family, shelf, limit, before }) =>
      [...rows.values()]
        .filter((row) => row.family === family && (shelf === undefined || row.shelf === shelf))
        .filter((row) => before === undefined || row.order > orderOf(before))
        .sort((a, b) => a.order - b.order)
        .slice(0, limit)
        .map(toHead),
    head: async (stream) => {
      const row = rows.get(stream)
      return row ? toHead(row) : null
    },
    onAppended: appended.add,
    onEntryState: moved.add,
    onHealed: () => () => undefined,
    onState: changed.add,
    state,
    ready: async () => undefined,
  }

  return {
    log,
    drafts: memoryDrafts(),
    archive,
    setMood(next) {
      mood = next
      changed.tell(state())
      if (journalWorks() && behind.length > 0) moved.tell(behind.splice(0), 'recorded')
    },
    receive(request) {
      if (write(request) === 'written') appended.tell(request.events, 'another-page')
    },
  }
}

function memoryDrafts(): Drafts {
  const texts = new Map<string, string>()
  return {
    read: async (key) => texts.get(key) ?? null,
    all: async (prefix) => new Map([...texts].filter(([key]) => key.startsWith(prefix))),
    write: async (key, text) => {
      if (text === null) texts.delete(key)
      else texts.set(key, text)
    },
  }
}
