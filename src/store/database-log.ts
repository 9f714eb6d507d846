import { type Event, inFoldOrder } from '../batch/event'
import type { AppendAnswer, AppendRequest, EventLog, HeadQuery } from '../ports/event-log'
import { appendEntries, ofStream } from './append'
import type { Connection } from './connection'
import { isFull, isStorageFault } from './faults'
import { orderOf, toHead } from './head-row'
import type { Journal } from './journal-port'
import type { HeadRow } from './schema'
import type { SecondCopy } from './second-copy'

export interface DatabaseLogOptions {
  readonly connection: Connection
  readonly journal: Pick<Journal, 'read'> & { state(): 'open' | 'dead' | 'missing' }
  readonly second: SecondCopy
  /** Resolves when the database is known to hold all that the journal has. */
  readonly databaseWhole: () => Promise<void>
  readonly onDurable: (events: readonly Event[]) => void
  readonly patienceMs: number
}

type LogPart = Pick<EventLog, 'read' | 'append' | 'heads' | 'head'>

/** Reading and appending over the connection; the database first, then the journal. */
export function databaseLog({
  connection,
  journal,
  second,
  databaseWhole,
  onDurable,
  patienceMs,
}: DatabaseLogOptions): LogPart {
  const orElse = async <T>(work: Promise<T>, otherwise: () => T | Promise<T>): Promise<T> => {
    try {
      return await work
    } catch (error) {
      if (isStorageFault(error)) return otherwise()
      throw error
    }
  }

  async function readJournal(stream: string): Promise<readonly Event[]> {
    const [events] = await journal.read([stream]).catch(() => [])
    return events ?? []
  }

  async function append(request: AppendRequest): Promise<AppendAnswer> {
    try {
      const written = await connection.run(async (db) => {
        await databaseWhole()
        return appendEntries(db, request, patienceMs)
      })
      if (written === 'conflict') return { state: 'conflict' }
    } catch (error) {
      if (!isStorageFault(error)) throw error
      return unwritten(error)
    }
    const state = await second.write(request.events)
    onDurable(request.events)
    return { state }
  }

  function unwritten(error: unknown): AppendAnswer {
    if (isFull(error)) return { state: 'not-saved', reason: 'STORAGE_FULL' }
    switch (connection.state()) {
      case 'newer':
        return { state: 'not-saved', reason: 'STORAGE_NEWER' }
      case 'refused':
        return { state: 'not-saved', reason: 'STORAGE_REFUSED' }
      case 'blocked':
        return journal.state() === 'open' ? { state: 'held' } : { state: 'not-saved', reason: 'STORAGE_BLOCKED' }
      case 'open':
      case 'dead':
        return journal.state() === 'open' ? { state: 'held' } : { state: 'not-saved', reason: 'STORAGE_REFUSED' }
    }
  }

  return {
    append,
    read: async (stream) => {
      const events = await orElse(
        connection.run((db) => db.getAll('events', ofStream(stream))),
        () => readJournal(stream),
      )
      return [...events].sort(inFoldOrder)
    },
    heads: (query) =>
      orElse(
        connection.run(async (db) => (await rowsOf(db, query)).map(toHead)),
        () => [],
      ),
    head: (stream) =>
      orElse(
        connection.run(async (db) => {
          const row = await db.get('heads', stream)
          return row ? toHead(row) : null
        }),
        () => null,
      ),
  }
}

async function rowsOf(
  db: Parameters<Parameters<Connection['run']>[0]>[0],
  query: HeadQuery,
): Promise<readonly HeadRow[]> {
  const after = query.before === undefined ? Number.NEGATIVE_INFINITY : orderOf(query.before)
  const last = Number.POSITIVE_INFINITY
  return query.shelf === undefined
    ? db.getAllFromIndex(
        'heads',
        'by-family',
        IDBKeyRange.bound([query.family, after], [query.family, last], true),
        query.limit,
      )
    : db.getAllFromIndex(
        'heads',
        'by-shelf',
        IDBKeyRange.bound([query.family, query.shelf, after], [query.family, query.shelf, last], true),
        query.limit,
      )
}
