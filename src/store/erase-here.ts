import { deleteDB } from 'idb'
import type { EraseWorld } from './erase'
import { webLocks } from './locks'
import { databaseName } from './schema'

/** The database, the journal and the remembered theme of this origin. */
export const eraseHere = (): EraseWorld => ({
  note: sessionStorage,
  locks: webLocks(),
  deleteDatabase: () => deleteDB(databaseName),
  deleteJournal: async () => {
    try {
      const root = await navigator.storage.getDirectory()
      await root.removeEntry('journal', { recursive: true })
    } catch (error) {
      // There was none: nothing to delete.
      if (!(error instanceof DOMException && error.name === 'NotFoundError')) throw error
    }
  },
  deletePreferences: () => localStorage.clear(),
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
})
