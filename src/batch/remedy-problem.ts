import type { Micrograms } from '../trade/mass'
import { relativeTolerance } from '../trade/relative-tolerance'
import type { RemedyLine, RemedyProblem } from '../trade/remedy'
import type { BatchVessel } from './header'
import { goesInBy, weighStepsOf } from './line-targets'
import { isPlannedFor } from './lost'
import { openDeviations } from './open-deviations'
import type { PlannedLine } from './plan'
import { isDone, vesselNow } from './progress'
import { couplingsOf, limitsOf, type OnHand, stockOf } from './remedy-limits'
import { startOf } from './rework-start'
import { qsLineOf } from './room'
import { type Standing, standingOf } from './standing'
import type { BatchState, Part } from './state'

/**
 * The remedy problem as the batch stands: the plan's lines in their order, then what was added without being planned.
 * Only what is in counts: what evaporated, was thrown away or lost is gone, and what can be taken out of a cup again is
 * not in. A line that was weighed well and can take no more is at its plan. Masses are those of the finished batch.
 */
export function problemOf(state: BatchState, onHand: OnHand = null): RemedyProblem {
  const standing = standingOf(state)
  const { totalUg } = standing
  const others = [...state.plan.lines].map(([id, planned]): RemedyLine => {
    const stockUg = stockOf(state, id, onHand)
    return lineOf(state, planned, { targetUg: standing.targetUg(id), massUg: standing.massUg(id), totalUg, stockUg })
  })
  const strangers = strangersOf(state, standing)
  const qs = qsLineOf(state)
  const rest = sum([...others, ...strangers].map(({ id, fraction }) => (id === qs ? 0 : fraction)))
  const lines = others.map((line) => (line.id === qs ? { ...line, fraction: Math.max(0, 1 - rest) } : line))
  const qsIndex = lines.findIndex(({ id }) => id === qs)
  return {
    totalUg,
    ...roomOf(state),
    qsIndex: qsIndex < 0 ? null : qsIndex,
    lines: [...lines, ...strangers],
    couplings: couplingsOf(state, onHand),
  }
}

/** A batch may be refused more of a line: its step has passed, or no step is left that takes any. */
export function isLocked(state: BatchState, planned: PlannedLine): boolean {
  const { id, amount, locksAfter } = planned.line
  const part = state.parts.at(-1)
  const isAdded = part !== undefined && isAddedIn(state, part, id)
  if (isAdded && amount.kind !== 'qs') return false
  if (locksAfter !== undefined && isDone(state, locksAfter)) return true
  if (part && amount.kind === 'fraction') return !canGoOn(state, part, id)
  switch (amount.kind) {
    case 'fraction':
      return false
    case 'as-needed':
      return state.plan.steps.every(({ step }) => !('line' in step) || step.line !== id || isDone(state, step.id))
    case 'qs':
      return (
        (part !== undefined || hasMakeUp(state)) &&
        !canMakeUp(state) &&
        weighStepsOf(state, id).every((step) => isDone(state, step.id))
      )
  }
}

/** A rework that adds a line says that it can still go in. */
const isAddedIn = (state: BatchState, { steps }: Part, line: string): boolean =>
  weighStepsOf(state, line).some(({ id }) => steps.includes(id) && state.steps.get(id)?.finished?.how !== 'skipped')

/** In a rework more of a line is weighed where it was weighed last, if what is reworked stands there now. */
function canGoOn(state: BatchState, part: Part, line: string): boolean {
  const last = weighStepsOf(state, line).at(-1)
  if (last === undefined || state.steps.get(last.id)?.finished?.how === 'skipped') return false
  return startOf(state, part).vessels.has(vesselNow(state, last.step.vessel))
}

const makeUpsOf = (state: BatchState) => state.plan.steps.filter(({ step }) => step.kind === 'make-up')

const hasMakeUp = (state: BatchState): boolean => makeUpsOf(state).length > 0

/** Water that is held back can still be brought in at the end. */
export const canMakeUp = (state: BatchState): boolean => makeUpsOf(state).some(({ id }) => !isDone(state, id))

interface LineStanding {
  readonly targetUg: Micrograms
  readonly massUg: Micrograms
  readonly totalUg: Micrograms
  readonly stockUg: Micrograms | null
}

function lineOf(state: BatchState, planned: PlannedLine, standing: LineStanding): RemedyLine {
  const { targetUg, massUg, totalUg, stockUg } = standing
  const { id, amount, tolerance } = planned.line
  const { low, high } = limitsOf(planned, targetUg / totalUg)
  const locked = isLocked(state, planned)
  const isOff = openDeviations(state).some((each) => each.line === id)
  const isSettled = locked && !isOff
  const line = {
    id,
    fraction: Math.max(0, isSettled ? massUg : targetUg) / totalUg,
    low,
    high,
    massUg,
    locked,
    stockUg,
    ...(planned.material.costPerKg === undefined ? {} : { costPerKg: planned.material.costPerKg }),
  }
  if (goesInBy(state, id) === 'as-needed' && !isSettled) return expected(line, totalUg)
  if (tolerance === undefined || amount.kind !== 'fraction' || planned.targetUg === 0) return line
  return { ...line, tolerance: relativeTolerance(planned.targetUg, tolerance) * planned.fraction }
}

/** What an adjuster will come to is not known before it is in: as much as is expected is kept free for it. */
function expected(line: RemedyLine, totalUg: Micrograms): RemedyLine {
  const fraction = Math.max(line.fraction, line.massUg / totalUg)
  return { ...line, fraction, tolerance: 1e-6 }
}

/** The same with adjusters that are still to come held at what is expected: no price moves them. */
export function withAdjustersHeld(state: BatchState, problem: RemedyProblem): RemedyProblem {
  const lines = problem.lines.map((line) => {
    const isOpen = goesInBy(state, line.id) === 'as-needed' && !line.locked
    return isOpen ? { ...line, low: line.fraction, high: line.fraction } : line
  })
  return { ...problem, lines }
}

/** Foreign mass, which stays in. Once it is decided on, or where it matters to no limit, it is part of the plan. */
function strangersOf(state: BatchState, { totalUg, massUg: massOf }: Standing): RemedyLine[] {
  return [...state.unplanned].map(([id, { body }]) => {
    const massUg = massOf(id)
    const costPerKg = state.header.materials.find((material) => material.id === body.materialId)?.costPerKg
    return {
      id,
      fraction: isPlannedFor(state, id) ? massUg / totalUg : 0,
      low: 0,
      high: body.most ?? 1,
      massUg,
      locked: true,
      stockUg: 0,
      ...(costPerKg === undefined ? {} : { costPerKg }),
    }
  })
}

/**
 * Room in the vessel where everything ends, unlimited where its capacity was not given, and what is stirred in it. A
 * stirrer that the planned size is not for was kept with a reason: it asks for nothing more.
 */
function roomOf(state: BatchState): Pick<RemedyProblem, 'capacityUg' | 'stirsUg'> {
  const { capacityUg = Number.MAX_SAFE_INTEGER, stirsUg } = lastVessel(state) ?? {}
  const { totalUg } = state.plan
  const isFor = stirsUg !== undefined && totalUg >= stirsUg.min && totalUg <= stirsUg.max
  return isFor ? { capacityUg, stirsUg } : { capacityUg }
}

/** The vessel where everything ends. */
export function lastVessel(state: BatchState): BatchVessel | undefined {
  const last = state.plan.steps.findLast(({ step }) => step.kind === 'weigh' || step.kind === 'charge')
  return last && state.plan.vessels.get(endVessel(state, vesselNow(state, last.step.vessel)))
}

/** Follows the plan's own charges and combinations to where a vessel's contents are to end. */
export function endVessel(state: BatchState, vesselId: string): string {
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

const sum = (values: Iterable<number>): number => [...values].reduce((total, value) => total + value, 0)
