import type { Gate } from './gate'
import type { PlannedStep } from './plan'
import type { BatchRefusal } from './refusal'
import type { BatchState } from './state'

/** The speed and size of a tool as they were typed. */
interface Turned {
  readonly toolRpm?: number
  readonly toolMm?: number
}

/** Why a speed is not recorded as it stands: it cannot be, or it is outside the range and nobody has said why. */
export function unfitSpeed(state: BatchState, planned: PlannedStep, { toolRpm, toolMm }: Turned): BatchRefusal | null {
  if (toolRpm !== undefined && !(toolRpm >= 1 && toolRpm <= 50_000)) return { code: 'SPEED_ABSURD', rpm: toolRpm }
  if (toolMm !== undefined && !(toolMm >= 2 && toolMm <= 500)) return { code: 'DIAMETER_ABSURD', diameterMm: toolMm }
  const gate = speedGate(planned, toolRpm)
  if (gate === null || state.steps.get(planned.id)?.gatesPassed.has(gate.key)) return null
  return { code: 'GATE', gates: [gate] }
}

/** A speed outside the formula's range, to be typed again or gone on with for a reason; another speed asks anew. */
export function speedGate({ step }: PlannedStep, rpm: number | undefined): Gate | null {
  if (step.kind !== 'mix' || step.rpm === undefined || rpm === undefined) return null
  if (rpm >= step.rpm.min && rpm <= step.rpm.max) return null
  return { code: 'SPEED_OUTSIDE', key: `SPEED_OUTSIDE:${rpm}`, passable: true, tool: step.tool, rpm, range: step.rpm }
}
