import type { Micrograms } from '../trade/mass'
import type { BatchState, DeviationState } from './state'

/** By how much what goes into the batch changes where a deviation is left as it is. */
export function acceptedChangeUg({ cause, direction, byUg }: DeviationState): Micrograms {
  if (cause === 'loss' || cause === 'lot') return 0
  return direction === 'over' ? byUg : -byUg
}

/** Deviations of vessels that wait for a way on. */
export const openDeviations = (state: BatchState): readonly DeviationState[] =>
  [...state.deviations.values()].filter((each) => !each.settled)
