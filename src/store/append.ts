import type { AppendRequest } from '../ports/event-log'
import type { Database } from './database'
import { keyOf } from './entry-key'
import { NoAnswer } from './faults'
import { headAfter } from './head-row'
import { whole } from './whole-database'

/**
 * Writes entries after the one their writer saw last, in one strict transaction; `conflict` where another one stands
 * there, and nothing is written. Doing it again is no harm: the same entries count as written.
 */
export async function appendEntries(
  db: Database,
  request: AppendRequest,
  patienceMs: number,
): Promise<'written' | 'conflict'> {
  const first = request.events[0]
  if (!first) return 'written'
  const tx = whole(db).transaction(['events', 'heads'], 'readwrite', { durability: 'strict' })
  const ended = tx.done.catch(() => undefined)
  const events = tx.objectStore('events')
  const heads = tx.objectStore('heads')
  const write = async (): Promise<'written' | 'conflict'> => {
    const asked = heads.get(first.stream)
    // Worked out while the database looks for the row.
    const projection = request.projection()
    const row = await asked
    if ((row?.hash ?? null) !== request.after) {
      const [twin] = await Promise.all([events.get(keyOf(first)), tx.done])
      return twin?.hash === first.hash ? 'written' : 'conflict'
    }
    const next = headAfter(row, request.events, projection)
    const adds = request.events.map((event) => events.add(event, keyOf(event)))
    await Promise.all([...adds, next && heads.put(next), endOf(tx)])
    return 'written'
  }
  try {
    return await orAbort(write(), () => tx.abort(), patienceMs)
  } catch (error) {
    if (error instanceof NoAnswer) throw error
    await ended
    if (error instanceof DOMException && error.name === 'ConstraintError') return 'conflict'
    throw tx.error ?? error
  }
}

/** Commits at once, and waits until the transaction is done. */
export function endOf(tx: { commit(): void; readonly done: Promise<void> }): Promise<void> {
  tx.commit()
  return tx.done
}

/**
 * Aborts work that takes too long. Where the abort comes too late, the commit is under way and nobody knows: then
 * only its own answer will do, since an entry written twice would be worse than a long wait.
 */
function orAbort<T>(work: Promise<T>, abort: () => void, patienceMs: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const limit = setTimeout(() => {
      try {
        abort()
        reject(new NoAnswer())
      } catch {
        // Committing already.
      }
    }, patienceMs)
    work.then(resolve, reject).finally(() => clearTimeout(limit))
  })
}
