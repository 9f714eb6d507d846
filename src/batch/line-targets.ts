import type { Amount } from '../trade/amount'
import { inSink } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { inBatchUg } from './in-batch'
import { isPlannedFor } from './lost'
import type { PlannedStep } from './plan'
import { targetOf } from './progress'
import type { BatchState, DeviationState } from './state'

/** What a line is to come to, by the targets that count now; q.s. with what is held back. */
export function lineTargetUg(state: BatchState, line: string): Micrograms {
  const planned = state.plan.lines.get(line)
  if (!planned) return 0
  switch (planned.line.amount.kind) {
    case 'qs':
      return state.totalUg - otherTargetsUg(state, line) - strangersUg(state)
    case 'as-needed':
      return Math.round((planned.targetUg * state.totalUg) / state.plan.totalUg)
    case 'fraction':
      return weighStepsOf(state, line).reduce((sum, { id }) => sum + effectiveTargetUg(state, id), 0)
  }
}

/** A settled deviation makes what is in the vessel the plan, for all that is computed later. */
export function effectiveTargetUg(state: BatchState, stepId: string): Micrograms {
  const targetUg = targetOf(state, stepId) ?? 0
  const line = state.plan.byId.get(stepId)?.line?.line.id
  const settled = [...state.deviations.values()].some(
    (each) => each.step === stepId && each.line === line && each.cause !== 'loss' && leavesItIn(each.settled),
  )
  const netUg = state.steps.get(stepId)?.netUg ?? 0
  if (!settled) return targetUg
  if (state.steps.get(stepId)?.finished?.how === 'accepted') return netUg
  return netUg === 0 ? targetUg : Math.max(targetUg, netUg)
}

/** What was struck out, taken out again or thrown away leaves nothing behind. */
const leavesItIn = (settled: DeviationState['settled']): boolean =>
  settled !== undefined && !['struck out', 'taken out', 'discard'].includes(settled.how)

export const weighStepsOf = (state: BatchState, line: string): readonly PlannedStep[] =>
  state.plan.steps.filter((planned) => planned.step.kind === 'weigh' && planned.step.line === line)

/** How more of a line goes in: what a rework adds of an adjuster is weighed like any other line. */
export function goesInBy(state: BatchState, line: string): Amount['kind'] | undefined {
  const kind = state.plan.lines.get(line)?.line.amount.kind
  const isWeighed = kind === 'as-needed' && weighStepsOf(state, line).some(({ part }) => part === state.parts.length)
  return isWeighed ? 'fraction' : kind
}

/** Foreign mass that is part of the plan: the water gives way to it, or the total has grown by it. */
export const strangersUg = (state: BatchState): Micrograms =>
  [...state.unplanned.keys()]
    .filter((component) => isPlannedFor(state, component))
    .reduce((sum, component) => sum + inBatchUg(state, component), 0)

/** Everything put in, less what evaporated or was thrown away. */
export const wholeBatchUg = (state: BatchState): Micrograms =>
  state.ledger.added.totalUg - inSink(state.ledger, 'evaporated') - inSink(state.ledger, 'discarded')

function otherTargetsUg(state: BatchState, except: string): Micrograms {
  let sumUg = 0
  for (const id of state.plan.lines.keys()) if (id !== except) sumUg += lineTargetUg(state, id)
  return sumUg
}
