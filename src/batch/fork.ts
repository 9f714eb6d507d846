import type { Event } from './event'
import type { BatchEvent } from './kinds'
import type { BatchState, Doubt } from './state'

/** True where the entry was written without knowing the one that now stands before it. */
export const isFork = (state: BatchState, event: Event): boolean =>
  state.lastHash !== null && event.parents[0] !== state.lastHash

/** Two weighings of one step, neither of which knew of the other: both count, and a person should look. */
export function firstDoubtOfFork(state: BatchState, event: BatchEvent): Doubt | null {
  if (event.kind !== 'weighed') return null
  const others = state.steps.get(event.body.step)?.weighings ?? []
  const unaware = others.filter((other) => !descendsFrom(state, event, other))
  if (unaware.length === 0) return null
  return { code: 'WEIGHED_TWICE', step: event.body.step, entries: [...unaware.map((other) => other.id), event.id] }
}

function descendsFrom(state: BatchState, event: Event, ancestor: Event): boolean {
  const byHash = new Map(state.entries.map((entry) => [entry.event.hash, entry.event]))
  let at: Event | undefined = event
  while (at !== undefined && at.lamport > ancestor.lamport) {
    const parent: string | undefined = at.parents[0]
    at = parent === undefined ? undefined : byHash.get(parent)
  }
  return at?.id === ancestor.id
}
