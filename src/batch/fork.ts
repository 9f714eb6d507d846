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
  const entries = [...unaware.map(({ id }) => id), event.id]
  const follows = others.filter((other) => !unaware.includes(other)).map(({ id }) => id)
  const isTold = state.doubts.some(
    (doubt) =>
      doubt.code === 'WEIGHED_TWICE' &&
      doubt.step === step &&
      follows.some((id) => doubt.entries.includes(id)) &&
      unaware.every(({ id }) => doubt.entries.includes(id)),
  )
  return isTold ? null : { code: 'WEIGHED_TWICE', step, entries }
}

/**
 * Those that the event did not know: not before it in its own line of entries. One installation writes one row and
 * knows it, so that only those since its own last weighing of the step are in question. Entries stand in fold order,
 * every one behind its parent: one walk back finds all, and ends at the oldest in question.
 */
function unawareOf<E extends Event>(state: BatchState, event: Event, others: readonly E[]): readonly E[] {
  const own = others.findLastIndex(({ replica }) => replica === event.replica)
  const strange = new Map(others.slice(own + 1).map((each) => [each.hash, each]))
  const oldest = Math.min(...[...strange.values()].map(({ lamport }) => lamport))
  let [parent] = event.parents
  for (let at = state.entries.length - 1; at >= 0 && strange.size > 0; at -= 1) {
    const before = state.entries[at]?.event
    if (before === undefined || before.lamport < oldest) break
    if (before.hash !== parent) continue
    strange.delete(before.hash)
    parent = before.parents[0]
  }
  return [...strange.values()]
}
