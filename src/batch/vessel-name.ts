import type { BatchState } from './state'

export const nameOfVessel = (state: BatchState, vessel: string): string =>
  state.plan.vessels.get(vessel)?.name ?? state.header.vessels.find((each) => each.id === vessel)?.name ?? vessel
