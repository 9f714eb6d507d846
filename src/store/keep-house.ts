import type { BuiltStore } from './build-store'
import type { Journal } from './journal-port'
import type { StateHolder } from './storage-state'
import { untilIdle } from './until-idle'
import { verifyAll } from './verify'

const pollMs = 5_000
const housekeepingAfterMs = 4_000
const longestBusyMs = 10_000

/** Once both copies are compared: watches that they answer, and when the page is idle merges and verifies them. */
export async function keepHouse(store: BuiltStore, journal: Journal, state: StateHolder): Promise<void> {
  const { connection } = store
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void store.revive()
  })
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) void store.revive()
  })
  setInterval(() => {
    if (connection.state() !== 'open' && connection.state() !== 'newer') void store.revive()
  }, pollMs)
  await Promise.all([state.persist(), state.measure(), store.revive()])
  setTimeout(() => void untilIdle(longestBusyMs).then(clean), housekeepingAfterMs)

  async function clean(): Promise<void> {
    try {
      await journal.merge()
      await verifyAll(connection, journal, store.reportDamaged)
    } catch {
      // Whatever died here says so where entries are written; the next start goes on with the house.
    }
  }
}
