import type { Event } from '../batch/event'
import type { AppendAnswer, AppendRequest } from '../ports/event-log'
import { appendEntries } from './append'
import type { Connection } from './connection'
import { isFull, isStorageFault } from './faults'
import type { RestartableJournal, SecondCopy } from './second-copy'

export interface WriterOptions {
  readonly connection: Connection
  readonly journal: Pick<RestartableJournal, 'state'>
  readonly second: SecondCopy
  /** Resolves when the database is known to hold all that the journal has. */
  readonly databaseWhole: () => Promise<void>
  readonly onDurable: (events: readonly Event[]) => void
  readonly patienceMs: number
}

/** Appends over the connection: the database first, then the journal. */
export function writerOf({ connection, journal, second, ...options }: WriterOptions) {
  async function append(request: AppendRequest): Promise<AppendAnswer> {
    try {
      const written = await connection.run(async (db) => {
        await options.databaseWhole()
        return appendEntries(db, request, options.patienceMs)
      })
      if (written === 'conflict') return { state: 'conflict' }
    } catch (error) {
      if (!isStorageFault(error)) throw error
      return unwritten(error)
    }
    const state = await second.write(request.events)
    options.onDurable(request.events)
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

  return append
}
