import type { StepState } from './state'

export const freshStep = (id: string, targetUg: number | undefined): StepState => ({
  id,
  targets: targetUg === undefined ? [] : [targetUg],
  countedUg: 0,
  netUg: 0,
  weighings: [],
  portions: [],
  gatesPassed: new Map(),
})
