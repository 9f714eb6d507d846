import { deleteDB } from 'idb'
import { askToErase, type EraseWorld, eraseIfAsked } from './erase'
import { eraseNote } from './erase-note'
import { webLocks } from './locks'
import { pause } from './pause'
import { databaseName } from './schema'

/** The database, the journal and the remembered theme of this origin. */
const here = (): EraseWorld => ({
  note: eraseNote,
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
  wait: pause,
})

export const eraseHereIfAsked = () => eraseIfAsked(here())

export const askToEraseHere = (): void => askToErase(here())
