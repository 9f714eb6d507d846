import { type Event, inFoldOrder } from '../batch/event'
import { addMissing } from './add-missing'
import type { Connection } from './connection'
import type { Project } from './head-row'
import type { Journal } from './journal-port'
import { ofStream } from './of-stream'
import type { SecondCopy } from './second-copy'
import { whole } from './whole-database'

/** What files leave from and come to: never more than some streams of it at once. */
export interface ArchiveShelf {
  /** The names of all streams, sorted. */
  streams(): Promise<readonly string[]>
  read(stream: string): Promise<readonly Event[]>
  /** As the second copy holds it; null where that does not answer. */
  readSecond(stream: string): Promise<readonly Event[] | null>
  /** Called once before the first `add`. */
  prepare(): Promise<void>
  /** Adds what is missing, all of it or nothing. Answers how many entries that were. */
  add(streams: ReadonlyMap<string, readonly Event[]>): Promise<number>
  /** From here on this installation writes under another name: its old one may have come back with the file. */
  renewReplica(): Promise<void>
}

/** What the archive needs of the store. */
export interface ArchiveParts {
  readonly connection: Connection
  readonly second: SecondCopy
  readonly journal: Pick<Journal, 'read'>
  readonly loadProject: () => Promise<Project>
  readonly onDurable: (events: readonly Event[]) => void
  readonly databaseWhole: () => Promise<void>
  readonly newReplica: () => string
}

export function shelfOf({ connection, second, ...parts }: ArchiveParts): ArchiveShelf {
  return {
    streams: () => connection.run((db) => db.getAllKeys('heads')),
    read: (stream) => connection.run((db) => db.getAll('events', ofStream(stream))),
    readSecond: (stream) =>
      parts.journal.read([stream]).then(
        ([events]) => [...(events ?? [])].sort(inFoldOrder),
        () => null,
      ),
    prepare: parts.databaseWhole,
    add: async (streams) => {
      const project = await parts.loadProject()
      const { added } = await connection.run((db) => addMissing(db, streams, project))
      if (added.length > 0) {
        await second.write(added)
        parts.onDurable(added)
      }
      return added.length
    },
    renewReplica: async () => {
      const replica = parts.newReplica()
      await connection.run((db) => whole(db).put('meta', replica, 'replica'))
    },
  }
}
