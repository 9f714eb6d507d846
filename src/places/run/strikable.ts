import { canBeStruck } from '../../batch/fold'
import type { BatchState } from '../../batch/state'

/** Those of an act's entries that a strike-out can take back. */
export const strikableOf = (state: BatchState, ids: readonly string[]): readonly string[] =>
  ids.filter((id) => {
    const entry = state.entries.findLast(({ event }) => event.id === id)
    return entry !== undefined && entry.struck === undefined && canBeStruck(entry.event.kind)
  })
