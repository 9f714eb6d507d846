import type { EventLog, StreamHead } from '../ports/event-log'
import type { KeptHandle } from './live-batch'

/** Batches that are in hand no more, newest first, at most `limit` of them, touched before `before` (ISO 8601). */
export async function finishedHeads(log: EventLog, limit: number, before?: string): Promise<readonly StreamHead[]> {
  const query = { family: 'batch' as const, limit, ...(before === undefined ? {} : { before }) }
  const shelves = await Promise.all(['finished', 'follow-up'].map((shelf) => log.heads({ ...query, shelf })))
  return shelves
    .flat()
    .sort((a, b) => (a.touchedAt < b.touchedAt ? 1 : -1))
    .slice(0, limit)
}

/** Decides what was held while the database was dead. */
export async function decideHeld(log: EventLog, open: (id: string) => Promise<KeptHandle | null>): Promise<void> {
  for (const held of await log.heldIntentions()) {
    const handle = await open(held.stream.slice('batch:'.length))
    if (!handle) continue
    await handle.decideHeld(held)
    await log.releaseHeld(held.id)
  }
}
