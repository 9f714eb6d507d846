import type { StepState, VesselState } from './state'

export const freshStep = (id: string, targetUg: number | undefined): StepState => ({
  id,
  targets: targetUg === undefined ? [] : [targetUg],
  countedUg: 0,
  netUg: 0,
  weighings: [],
  portions: [],
  gatesPassed: new Map(),
})

export const freshVessel = (id: string, tareUg?: number): VesselState => ({
  id,
  readings: [],
  ...(tareUg === undefined ? {} : { tareUg }),
})
