import type { BatchState, DeviationState } from './state'

/** Deviations of vessels that wait for a way on. */
export const openDeviations = (state: BatchState): readonly DeviationState[] =>
  [...state.deviations.values()].filter((each) => !each.settled)
