import { addedOf, sinkContents } from '../trade/ledger-sums'
import type { Micrograms } from '../trade/mass'
import type { BatchState } from './state'

/** The mass of a component that was put in and has neither evaporated nor been thrown away. */
export const inBatchUg = (state: BatchState, component: string): Micrograms =>
  addedOf(state.ledger, component) -
  (sinkContents(state.ledger, 'evaporated').get(component) ?? 0) -
  (sinkContents(state.ledger, 'discarded').get(component) ?? 0)
