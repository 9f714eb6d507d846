import type { Event } from './event'
import type { BatchEvent } from './kinds'
import type { BatchState, Doubt } from './state'

/** True where the entry was written without knowing the one that now stands before it. */
export const isFork = (state: BatchState, event: Event): boolean =>
  state.lastHash !== null && event.parents[0] !== state.lastHash

/**
 * Two weighings of one step, neither of which knew of the other: both count, and a person should look. Told once: a
 * later weighing that follows one of them says nothing new.
 */
export function firstDoubtOfFork(state: BatchState, event: BatchEvent): Doubt | null {
  if (event.kind !== 'weighed') return null
  const { step } = event.body
  const others = state.steps.get(step)?.weighings ?? []
  const unaware = unawareOf(state, event, others)
  if (unaware.length === 0) return null
  // One that names all of them and more names one that this weighing follows.
  const isTold = state.doubts.some(
    (doubt) =>
      doubt.code === 'WEIGHED_TWICE' &&
      doubt.entries.length > unaware.length &&
      unaware.every(({ id }) => doubt.entries.includes(id)),
  )
  return isTold ? null : { code: 'WEIGHED_TWICE', step, entries: [...unaware, event].map(({ id }) => id) }
}

/**
 * Those that the event did not know: not before it in its own line of entries. One installation writes one row and
 * knows it, so that only those since its own last weighing of the step are in question. Entries stand in fold order,
 * every one behind its parent: one walk back finds all, and ends at the oldest in question.
 */
function unawareOf<E extends Event>(state: BatchState, event: Event, others: readonly E[]): readonly E[] {
  const own = others.findLastIndex(({ replica }) => replica === event.replica)
  let strange = others.slice(own + 1)
  let [parent] = event.parents
  for (let at = state.entries.length - 1; at >= 0 && strange.length > 0; at -= 1) {
    const before = state.entries[at]?.event
    if (before === undefined || before.lamport < (strange[0]?.lamport ?? 0)) break
    if (before.hash !== parent) continue
    strange = strange.filter(({ hash }) => hash !== parent)
    ;[parent] = before.parents
  }
  return strange
}
