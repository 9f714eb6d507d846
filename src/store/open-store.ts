import type { KeyShelf } from '../ports/device-keys'
import { buildStore, type Store } from './build-store'
import type { Project } from './head-row'
import { earlyThread, type WorkerUrl } from './journal-thread'
import { pageLock, webLocks } from './locks'
import { otherPages } from './pages'
import { pause } from './pause'
import { type StateHolder, storageState } from './storage-state'

export interface StoreOptions {
  readonly workerUrl: WorkerUrl
  /** On a screen where nothing can be recorded the journal begins once that stands: both are slower side by side. */
  readonly recordsSoon: boolean
  readonly loadProject: () => Promise<Project>
  readonly newId: () => string
  /** ISO 8601 with the local offset. */
  readonly now: () => Promise<string>
}

export interface OpenedStore extends Store {
  /** Asks the browser not to clear this origin when space is short. */
  readonly askToKeep: () => Promise<void>
  readonly keyShelf: () => Promise<KeyShelf>
}

const patienceMs = 3_000

/** Opens this origin's store: the database and, beside it, the journal. Never rejects for a storage fault. */
export async function openStore(options: StoreOptions): Promise<OpenedStore> {
  const pageId = options.newId()
  const locks = webLocks()
  const state = storageState()
  const early = options.recordsSoon ? earlyThread(options.workerUrl, { pageId, incarnation: 1 }) : null
  const locked = locks.keep(pageLock(pageId))
  locked.catch(() => undefined)
  const openJournal = async () => {
    if (!options.recordsSoon) await untilDrawn(state)
    const client = (await import('./journal-client')).journalClient({
      workerUrl: options.workerUrl,
      early,
      pageId,
      locked,
      onState: (next) => state.set({ journal: next }),
    })
    void client.start()
    return client
  }
  const journal = openJournal()
  const store = await buildStore({ ...options, journal, locks, pageId, pages: otherPages(), state, patienceMs })
  const { log, drafts, archive } = store
  void log.ready().then(async () => {
    const [{ keepHouse }, client] = await Promise.all([import('./keep-house'), journal])
    await keepHouse(store, client, state)
  })
  return { log, drafts, archive, askToKeep: () => state.persist(), keyShelf: async () => (await store.copies).keyShelf }
}

/** The database has answered, or does not, and what is read from it for the first screen is mostly drawn. */
async function untilDrawn(state: StateHolder): Promise<void> {
  await Promise.race([new Promise((answered) => state.onChange(answered)), pause(500)])
  await pause(50)
}
