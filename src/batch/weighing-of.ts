import { contentsOf } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import type { Balance, Lot } from './catalogue'
import type { PlannedLine } from './plan'
import { assayRatio } from './plan-batch'
import { bandOfStep, targetOf, vesselNow } from './progress'
import type { BatchState } from './state'

/** What a weigh step asks of the next reading. Masses as the lot in use weighs them. */
export interface Weighing {
  readonly planned: PlannedLine
  readonly targetUg: Micrograms
  /** Targets that a remedy has replaced, oldest first. */
  readonly wasUg: readonly Micrograms[]
  readonly lowUg: Micrograms
  readonly highUg: Micrograms
  /** In already. */
  readonly countedUg: Micrograms
  readonly leftUg: Micrograms
  readonly leftLowUg: Micrograms
  readonly leftHighUg: Micrograms
  /** Readability of the balance. */
  readonly stepUg: Micrograms
  readonly vessel: string
  readonly inCup: boolean
  readonly balance: Balance
  readonly lots: readonly Lot[]
}

/** Null where the step weighs nothing. `lot` is the one in use: a weaker lot asks for more of it. */
export function weighingOf(state: BatchState, stepId: string, lot?: string): Weighing | null {
  const planned = state.plan.byId.get(stepId)
  const step = state.steps.get(stepId)
  if (!planned?.line || !step || planned.step.kind !== 'weigh') return null
  const targetUg = targetOf(state, stepId) ?? 0
  const band = bandOfStep(state, planned)
  const ratio = assayRatio(planned.line, lot)
  const left = (massUg: Micrograms): Micrograms => Math.round(Math.max(0, massUg - step.countedUg) / ratio)
  const vessel = vesselNow(state, planned.step.vessel)
  return {
    planned: planned.line,
    targetUg,
    wasUg: step.targets.slice(0, -1),
    ...band,
    countedUg: step.countedUg,
    leftUg: left(targetUg),
    leftLowUg: left(band.lowUg),
    leftHighUg: left(band.highUg),
    stepUg: planned.line.balance.stepUg,
    vessel,
    inCup: state.plan.vessels.get(vessel)?.kind === 'cup' && isAlone(state, vessel, planned.line.line.id),
    balance: planned.line.balance,
    lots: planned.line.lots,
  }
}

/** In a cup with nothing else in it, what is too much can be taken out again. */
const isAlone = (state: BatchState, vessel: string, line: string): boolean =>
  [...contentsOf(state.ledger, vessel).keys()].every((component) => component === line)
