import { addedOf, inSink, sinkContents } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import type { RemedyLine, RemedyProblem } from '../trade/remedy'
import { relativeTolerance } from '../trade/tolerance'
import type { RemedyKind } from './kinds'
import type { PlannedLine, PlannedStep } from './plan'
import { isDone, targetOf, vesselNow } from './progress'
import type { BatchState } from './state'

/** What a line may be in the finished product, and who says so. */
export interface Limits {
  readonly low: number
  readonly high: number
  readonly from: 'formula' | 'use level' | 'tolerance'
}

/**
 * The range of a line: the formula's own where it states one, narrowed by the material's use level; else the use
 * level; else the weighing tolerance round the planned fraction. As-needed lines have their own least and most.
 */
export function limitsOf(planned: PlannedLine): Limits {
  const { amount, range, tolerance } = planned.line
  if (amount.kind === 'as-needed') return { low: amount.min, high: amount.max, from: 'formula' }
  if (amount.kind === 'qs' && !range) return { low: 0, high: 1, from: 'formula' }
  const use = planned.material.useLevel
  if (range) {
    const low = Math.max(range.min, use?.min ?? 0)
    const high = Math.min(range.max, use?.max ?? 1)
    return { low, high, from: high < range.max || low > range.min ? 'use level' : 'formula' }
  }
  const relative = relativeTolerance(planned.targetUg, tolerance)
  const low = planned.fraction * (1 - relative)
  const high = planned.fraction * (1 + relative)
  return use && use.max < high ? { low, high: use.max, from: 'use level' } : { low, high, from: 'tolerance' }
}

/** What a line is to come to, by the targets that count now; q.s. with what is held back. */
export function lineTargetUg(state: BatchState, line: string): Micrograms {
  const planned = state.plan.lines.get(line)
  if (!planned) return 0
  switch (planned.line.amount.kind) {
    case 'qs':
      return state.totalUg - otherTargetsUg(state, line)
    case 'as-needed':
      return Math.round((planned.targetUg * state.totalUg) / state.plan.totalUg)
    case 'fraction':
      return weighStepsOf(state, line).reduce((sum, { id }) => sum + effectiveTargetUg(state, id), 0)
  }
}

/** Settled ways after which what is in stays in; a weighing that was struck out or taken back leaves nothing behind. */
const leavesItIn: ReadonlySet<string> = new Set<RemedyKind>(['accept', 'scale', 'qs'])

/** A settled deviation makes what is in the vessel the plan, for all that is computed later. */
export function effectiveTargetUg(state: BatchState, stepId: string): Micrograms {
  const targetUg = targetOf(state, stepId) ?? 0
  const settled = [...state.deviations.values()].find(
    (each) => each.step === stepId && each.settled !== undefined && leavesItIn.has(each.settled.how),
  )
  const netUg = state.steps.get(stepId)?.netUg ?? 0
  if (!settled || netUg === 0) return targetUg
  return state.steps.get(stepId)?.finished?.how === 'accepted' ? netUg : Math.max(targetUg, netUg)
}

/** The mass of a component that was put in and has neither evaporated nor been thrown away. */
export const inBatchUg = (state: BatchState, component: string): Micrograms =>
  addedOf(state.ledger, component) -
  (sinkContents(state.ledger, 'evaporated').get(component) ?? 0) -
  (sinkContents(state.ledger, 'discarded').get(component) ?? 0)

export const weighStepsOf = (state: BatchState, line: string): readonly PlannedStep[] =>
  state.plan.steps.filter((planned) => planned.step.kind === 'weigh' && planned.step.line === line)

/** The remedy problem as the batch stands, in the order of the plan's lines. */
export function problemOf(state: BatchState): RemedyProblem {
  const ids = [...state.plan.lines.keys()]
  const totalUg = state.totalUg
  const lines = ids.map((id): RemedyLine => {
    const planned = state.plan.lines.get(id)
    const limits = planned ? limitsOf(planned) : { low: 0, high: 1 }
    return {
      id,
      fraction: lineTargetUg(state, id) / totalUg,
      low: limits.low,
      high: limits.high,
      massUg: inBatchUg(state, id),
      locked: planned !== undefined && isLocked(state, planned),
      stockUg: null,
    }
  })
  const qsIndex = ids.findIndex((id) => state.plan.lines.get(id)?.line.amount.kind === 'qs')
  return { totalUg, capacityUg: capacityUg(state), qsIndex: qsIndex < 0 ? null : qsIndex, lines }
}

/** Room in the vessel where everything ends; unlimited where its capacity was not given. */
function capacityUg(state: BatchState): Micrograms {
  const last = state.plan.steps.findLast(({ step }) => step.kind === 'weigh' || step.kind === 'charge')
  const vessel = last ? state.plan.vessels.get(endVessel(state, vesselNow(state, last.step.vessel))) : undefined
  return vessel?.capacityUg ?? Number.MAX_SAFE_INTEGER
}

/** Follows the plan's own charges and combinations to where a vessel's contents are to end. */
function endVessel(state: BatchState, vesselId: string): string {
  const visited = new Set<string>()
  let at = vesselId
  while (!visited.has(at)) {
    visited.add(at)
    const into = state.plan.steps.find(
      ({ step }) => (step.kind === 'charge' && step.cup === at) || (step.kind === 'combine' && step.from === at),
    )
    if (into) at = into.step.vessel
  }
  return at
}

const isLocked = (state: BatchState, planned: PlannedLine): boolean =>
  planned.line.locksAfter !== undefined && isDone(state, planned.line.locksAfter)

function otherTargetsUg(state: BatchState, except: string): Micrograms {
  let sumUg = 0
  for (const id of state.plan.lines.keys()) if (id !== except) sumUg += lineTargetUg(state, id)
  return sumUg
}

/** Mass that was put in without being planned and is still there. */
export const unplannedUg = (state: BatchState): Micrograms =>
  [...state.unplanned.keys()].reduce((sum, component) => sum + inBatchUg(state, component), 0)

/** Everything put in, less what evaporated or was thrown away. */
export const wholeBatchUg = (state: BatchState): Micrograms =>
  state.ledger.added.totalUg - inSink(state.ledger, 'evaporated') - inSink(state.ledger, 'discarded')
