import { buildStore, type Store } from './build-store'
import type { Project } from './head-row'
import { journalClient, type WorkerUrl } from './journal-client'
import { webLocks } from './locks'
import { otherPages } from './pages'
import { storageState } from './storage-state'

export interface StoreOptions {
  readonly workerUrl: WorkerUrl
  readonly loadProject: () => Promise<Project>
  readonly newId: () => string
  /** ISO 8601 with the local offset. */
  readonly now: () => string
}

export interface OpenedStore extends Store {
  /** Asks the browser not to clear this origin when space is short. */
  readonly askToKeep: () => Promise<void>
}

const patienceMs = 3_000
const pollMs = 5_000
const housekeepingAfterMs = 4_000

/** Opens this origin's store: the database and, beside it, the journal. Never rejects for a storage fault. */
export async function openStore(options: StoreOptions): Promise<OpenedStore> {
  const pageId = options.newId()
  const locks = webLocks()
  const state = storageState()
  const journal = journalClient({
    workerUrl: options.workerUrl,
    pageId,
    locks,
    onState: (next) => state.set({ journal: next }),
  })
  void journal.start()
  const store = await buildStore({ ...options, journal, locks, pageId, pages: otherPages(), state, patienceMs })
  const { connection, watch, log, drafts, archive } = store

  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void store.revive()
  })
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) void store.revive()
  })
  setInterval(() => {
    if (connection.state() !== 'open' && connection.state() !== 'newer') void store.revive()
  }, pollMs)

  void watch.ready().then(async () => {
    await Promise.all([state.persist(), state.measure(), store.revive()])
    setTimeout(() => whenIdle(keepHouse), housekeepingAfterMs)
  })

  async function keepHouse(): Promise<void> {
    try {
      const { verifyAll } = await import('./verify')
      await journal.merge()
      await verifyAll(connection, journal, store.reportDamaged)
    } catch {
      // Whatever died here says so where entries are written; the next start goes on with the house.
    }
  }
  return { log, drafts, archive, askToKeep: () => state.persist() }
}

function whenIdle(task: () => Promise<void>): void {
  if (typeof requestIdleCallback === 'undefined') void task()
  else requestIdleCallback(() => void task(), { timeout: 10_000 })
}
