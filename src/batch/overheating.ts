import { contentsOf } from '../trade/ledger'
import type { PlannedStep } from './plan'
import { vesselNow } from './progress'
import type { BatchState } from './state'

/** So much above what a step heats to, a phase is too hot: more than a plate swings by itself. */
export const overheatedByC = 5

export type Overheating =
  | { readonly of: 'step'; readonly lastC: number; readonly limitC: number }
  | { readonly of: 'material'; readonly lastC: number; readonly limitC: number; readonly name: string }

/** Whether the last reading is past what the step heats to, or past what something in the vessel stands. */
export function overheatingOf(state: BatchState, { step }: PlannedStep): Overheating | null {
  const vessel = vesselNow(state, step.vessel)
  const lastC = state.vessels.get(vessel)?.readings.at(-1)?.temperatureC
  if (lastC === undefined) return null
  const tender = [...contentsOf(state.ledger, vessel).keys()]
    .flatMap((line) => state.plan.lines.get(line)?.material ?? [])
    .filter(({ maxTemperatureC }) => maxTemperatureC !== undefined && lastC > maxTemperatureC)
    .sort((a, b) => (a.maxTemperatureC ?? 0) - (b.maxTemperatureC ?? 0))[0]
  if (tender?.maxTemperatureC !== undefined)
    return { of: 'material', lastC, limitC: tender.maxTemperatureC, name: tender.name }
  const isTooHot = step.kind === 'heat' && lastC > step.targetC + overheatedByC
  return isTooHot ? { of: 'step', lastC, limitC: step.targetC } : null
}
