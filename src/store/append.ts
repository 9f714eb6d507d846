import { type Event, inFoldOrder } from '../batch/event'
import type { AppendRequest } from '../ports/event-log'
import { NoAnswer } from './faults'
import { headAfter, headOf, type Project } from './head-row'
import type { Database } from './schema'

const keyOf = (event: Event): [string, string, number] => [event.stream, event.replica, event.n]

/** All keys of one stream. */
export const ofStream = (stream: string): IDBKeyRange => IDBKeyRange.bound([stream], [stream, []])

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
  const tx = db.transaction(['events', 'heads'], 'readwrite', { durability: 'strict' })
  const ended = tx.done.catch(() => undefined)
  const events = tx.objectStore('events')
  const heads = tx.objectStore('heads')
  const write = async (): Promise<'written' | 'conflict'> => {
    const row = await heads.get(first.stream)
    if ((row?.hash ?? null) !== request.after) {
      const [twin] = await Promise.all([events.get(keyOf(first)), tx.done])
      return twin?.hash === first.hash ? 'written' : 'conflict'
    }
    const next = headAfter(row, request.events, request.projection)
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

function endOf(tx: { commit(): void; readonly done: Promise<void> }): Promise<void> {
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

export interface Union {
  readonly added: readonly Event[]
  readonly same: number
  /** Entries whose place [stream, replica, n] holds another entry here. They are not written. */
  readonly conflicting: number
}

/** Adds what is missing of several streams, in one strict transaction, and makes their heads again from all entries. */
export async function addMissing(
  db: Database,
  streams: ReadonlyMap<string, readonly Event[]>,
  project: Project,
): Promise<Union> {
  const tx = db.transaction(['events', 'heads'], 'readwrite', { durability: 'strict' })
  const events = tx.objectStore('events')
  const added: Event[] = []
  let same = 0
  let conflicting = 0
  try {
    for (const [stream, offered] of streams) {
      const present = await events.getAll(ofStream(stream))
      const { fresh, ...counts } = compareEntries(present, offered)
      same += counts.same
      conflicting += counts.conflicting
      added.push(...fresh)
      const head = fresh.length > 0 && headOf(stream, [...present, ...fresh], project)
      await Promise.all([
        ...fresh.map((event) => events.add(event, keyOf(event))),
        head && tx.objectStore('heads').put(head),
      ])
    }
    await endOf(tx)
  } catch (error) {
    await tx.done.catch(() => undefined)
    throw tx.error ?? error
  }
  return { added, same, conflicting }
}

/** What `offered` would bring to the `present` entries of one stream. */
export function compareEntries(
  present: readonly Event[],
  offered: readonly Event[],
): { fresh: readonly Event[]; same: number; conflicting: number } {
  const here = new Map(present.map((event) => [keyOf(event).join('\n'), event.hash]))
  const fresh: Event[] = []
  let same = 0
  let conflicting = 0
  for (const event of offered) {
    const hash = here.get(keyOf(event).join('\n'))
    if (hash === undefined) {
      fresh.push(event)
      here.set(keyOf(event).join('\n'), event.hash)
    } else if (hash === event.hash) same += 1
    else conflicting += 1
  }
  return { fresh: fresh.sort(inFoldOrder), same, conflicting }
}
