import { copyState } from './copy-state'
import { type Event, inFoldOrder, type Tip } from './event'
import { foldBatch, foldEntry, type Strike } from './fold'
import type { BatchState } from './state'

/**
 * The state after some more entries; the state before stays as it was. An entry costs the same at the end of a long
 * log, unless one strikes out or arrives late: then everything is folded again.
 */
export function extendBatch(state: BatchState, events: readonly Event[]): BatchState {
  const ordered = [...events].sort(inFoldOrder)
  if (ordered.some((event) => event.kind === 'struck') || arrivesLate(state, ordered)) {
    return foldBatch([...state.entries.map((entry) => entry.event), ...ordered])
  }
  const grown = copyState(state)
  for (const event of ordered) foldEntry(grown, event, noStrikes)
  return grown
}

/** Where `replica` writes next in this batch. */
export const tipFor = (state: BatchState, replica: string): Tip => ({
  next: state.nextOf.get(replica) ?? 0,
  lamport: state.lastLamport,
  hash: state.lastHash,
})

const noStrikes: ReadonlyMap<string, Strike> = new Map()

const arrivesLate = (state: BatchState, ordered: readonly Event[]): boolean => {
  const first = ordered[0]
  const last = state.entries.at(-1)?.event
  return first !== undefined && last !== undefined && inFoldOrder(first, last) < 0
}
