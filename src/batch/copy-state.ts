import { copyLedger } from '../trade/ledger-copy'
import type { BatchState, StepState, VesselState } from './state'

/**
 * A state that can be grown without touching the one it came from: what the screen shows never changes before the
 * entry is durable. Costs as much as the formula is long, not as the log is.
 */
export function copyState(state: BatchState): BatchState {
  return {
    ...state,
    totalWas: [...state.totalWas],
    steps: new Map([...state.steps].map(([id, step]) => [id, copyStep(step)])),
    vessels: new Map([...state.vessels].map(([id, vessel]) => [id, copyVessel(vessel)])),
    ledger: copyLedger(state.ledger),
    timers: new Map([...state.timers].map(([id, timer]) => [id, { ...timer }])),
    deviations: new Map([...state.deviations].map(([id, deviation]) => [id, { ...deviation }])),
    entries: [...state.entries],
    unplanned: new Map(state.unplanned),
    measurements: [...state.measurements],
    instruments: [...state.instruments],
    preflight: [...state.preflight],
    lotsOfLine: new Map(state.lotsOfLine),
    usedByLot: new Map(state.usedByLot),
    doubts: [...state.doubts],
    unknownKinds: new Set(state.unknownKinds),
    nextOf: new Map(state.nextOf),
  }
}

const copyStep = (step: StepState): StepState => ({
  ...step,
  targets: [...step.targets],
  weighings: [...step.weighings],
  portions: [...step.portions],
  gatesPassed: new Map(step.gatesPassed),
})

const copyVessel = (vessel: VesselState): VesselState => ({ ...vessel, readings: [...vessel.readings] })
