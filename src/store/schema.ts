import type { DBSchema } from 'idb'
import type { Event } from '../batch/event'
import type { KeptKey } from '../ports/device-keys'
import type { StreamHead } from '../ports/event-log'

export const databaseName = 'pannikin'
export const databaseVersion = 1

/** A head as it is stored: `order` is minus the time of the last entry in ms, so that an index lists the newest first. */
export interface HeadRow extends StreamHead {
  readonly order: number
  /** Digest of the set of the stream's entries (checksum.ts). */
  readonly sum: string
}

export interface Schema extends DBSchema {
  events: { key: [stream: string, replica: string, n: number]; value: Event }
  heads: {
    key: string
    value: HeadRow
    indexes: {
      'by-shelf': [family: string, shelf: string, order: number]
      'by-family': [family: string, order: number]
    }
  }
  /**
   * `replica`: the id of this installation. `verified-to`: the last stream whose hashes were checked when idle.
   * `device-key`: what this installation signs with.
   */
  meta: { key: string; value: string | KeptKey }
  drafts: { key: string; value: string }
}

/** Additive steps only: a step that has shipped is never changed, and none rewrites an entry. `upTo` is for tests. */
export function migrate(
  db: Pick<IDBDatabase, 'createObjectStore'>,
  oldVersion: number,
  tx: Pick<IDBTransaction, 'objectStore'>,
  newReplica: () => string,
  upTo = databaseVersion,
): void {
  if (oldVersion < 1 && upTo >= 1) {
    db.createObjectStore('events')
    const heads = db.createObjectStore('heads', { keyPath: 'stream' })
    heads.createIndex('by-shelf', ['family', 'shelf', 'order'])
    heads.createIndex('by-family', ['family', 'order'])
    db.createObjectStore('meta')
    db.createObjectStore('drafts')
    tx.objectStore('meta').put(newReplica(), 'replica')
  }
}
