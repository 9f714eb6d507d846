import type { Connection } from './connection'
import { whole } from './whole-database'

/** Writes texts by their keys, and takes those away that are null. */
export type WriteDrafts = (texts: ReadonlyMap<string, string | null>) => Promise<void>

export const writeDraftsTo =
  (connection: Connection): WriteDrafts =>
  (texts) =>
    connection.run(async (db) => {
      const tx = whole(db).transaction('drafts', 'readwrite', { durability: 'relaxed' })
      const writes = [...texts].map(([key, text]) => (text === null ? tx.store.delete(key) : tx.store.put(text, key)))
      tx.commit()
      await Promise.all([...writes, tx.done])
    })
