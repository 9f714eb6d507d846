import type { Micrograms } from '../trade/mass'
import type { DeviationState } from './state'

/** By how much what goes into the batch changes where a deviation is left as it is. */
export function acceptedChangeUg({ cause, direction, byUg }: DeviationState): Micrograms {
  if (cause === 'loss' || cause === 'lot') return 0
  return direction === 'over' ? byUg : -byUg
}
