import { type Event, inFoldOrder } from '../batch/event'
import { endOf } from './append'
import type { Database } from './database'
import { keyOf } from './entry-key'
import { headOf, type Project } from './head-row'
import { ofStream } from './of-stream'
import { whole } from './whole-database'

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
  const tx = whole(db).transaction(['events', 'heads'], 'readwrite', { durability: 'strict' })
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
