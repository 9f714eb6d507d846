import type { Drafts } from '../ports/event-log'
import type { Connection } from './connection'
import { isStorageFault } from './faults'
import type { Pages } from './pages'
import type { WriteDrafts } from './write-drafts'

/** Drafts in the database, written at once and coalesced while a write is under way; kept in memory where it fails. */
export function databaseDrafts(connection: Connection, pages: Pages, write: WriteDrafts): Drafts {
  const latest = new Map<string, string | null>()
  const unwritten = new Set<string>()
  let turn: Promise<void> = Promise.resolve()

  async function flush(): Promise<void> {
    const keys = [...unwritten]
    if (keys.length === 0) return
    unwritten.clear()
    try {
      await write(new Map(keys.map((key) => [key, latest.get(key) ?? null])))
    } catch (error) {
      if (!isStorageFault(error)) throw error
      for (const key of keys) unwritten.add(key)
    }
  }

  pages.onMessage((message) => {
    if (message.kind === 'draft') latest.set(message.key, message.text)
  })

  return {
    async read(key) {
      const text = latest.get(key)
      if (text !== undefined) return text
      return (await orNothing(connection.run((db) => db.get('drafts', key)))) ?? null
    },
    async all(prefix) {
      const stored = await orNothing(
        connection.run((db) => {
          const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`)
          return Promise.all([db.getAllKeys('drafts', range), db.getAll('drafts', range)])
        }),
      )
      const [keys, texts] = stored ?? [[], []]
      const drafts = new Map(keys.map((key, index) => [key, texts[index] ?? '']))
      for (const [key, text] of latest) {
        if (!key.startsWith(prefix)) continue
        if (text === null) drafts.delete(key)
        else drafts.set(key, text)
      }
      return drafts
    },
    write(key, text) {
      latest.set(key, text)
      unwritten.add(key)
      pages.tell({ kind: 'draft', key, text })
      turn = turn.then(flush, flush)
      return turn
    },
  }
}

async function orNothing<T>(work: Promise<T>): Promise<T | undefined> {
  try {
    return await work
  } catch (error) {
    if (isStorageFault(error)) return undefined
    throw error
  }
}
