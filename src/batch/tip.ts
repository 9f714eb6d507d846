import type { Event, Tip } from './event'

/** The tip after an event of this replica. */
export function advance(tip: Tip, event: Event): Tip {
  return { next: event.n + 1, lamport: Math.max(tip.lamport, event.lamport), hash: event.hash }
}

export const emptyTip: Tip = { next: 0, lamport: 0, hash: null }

/** The tip that a whole stream leaves for `replica` to write after; events in fold order. */
export function tipOf(events: readonly Event[], replica: string): Tip {
  let next = 0
  for (const event of events) if (event.replica === replica) next = Math.max(next, event.n + 1)
  const last = events.at(-1)
  return { next, lamport: last?.lamport ?? 0, hash: last?.hash ?? null }
}
