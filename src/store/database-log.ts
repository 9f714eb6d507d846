import { type Event, inFoldOrder } from '../batch/event'
import type { EventLog, HeadQuery } from '../ports/event-log'
import type { Connection } from './connection'
import { isStorageFault } from './faults'
import { orderOf, toHead } from './head-list'
import { ofStream } from './of-stream'
import type { HeadRow } from './schema'

type LogPart = Pick<EventLog, 'read' | 'heads' | 'head'>

/** Reading over the connection; where there is none an entry comes from the journal. */
export function databaseLog(
  connection: Connection,
  readJournal: (stream: string) => Promise<readonly Event[]>,
): LogPart {
  const orElse = async <T>(work: Promise<T>, otherwise: () => T | Promise<T>): Promise<T> => {
    try {
      return await work
    } catch (error) {
      if (isStorageFault(error)) return otherwise()
      throw error
    }
  }

  return {
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
