import { deleteDB } from 'idb'
import { askToErase, type EraseWorld, eraseIfAsked } from './erase'
import { webLocks } from './locks'
import { databaseName } from './schema'

/** The database, the journal and the remembered theme of this origin. */
const here = (): EraseWorld => ({
  note: {
    getItem: (key) => tryStorage(() => sessionStorage.getItem(key)) ?? null,
    setItem: (key, text) => tryStorage(() => sessionStorage.setItem(key, text)),
    removeItem: (key) => tryStorage(() => sessionStorage.removeItem(key)),
  },
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

/** Where site data is blocked even looking at it throws; the start then goes on, and the log says what is refused. */
function tryStorage<T>(use: () => T): T | undefined {
  try {
    return use()
  } catch {
    return undefined
  }
}

export const eraseHereIfAsked = () => eraseIfAsked(here())

export const askToEraseHere = (): void => askToErase(here())
