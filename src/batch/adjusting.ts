import { advisePh, chargePoints, type PhAdvice, type PhProblem, type PhRecord, type PhRefusal } from '../trade/acidity'
import { type Adjuster, type AdjusterRefusal, adjusterOf } from '../trade/adjusters'
import { type ChargeCurve, chargeCurve } from '../trade/charge-curve'
import type { Micrograms } from '../trade/mass'
import { mulDiv } from '../trade/mass-ratio'
import { accept, type Result, refuse } from '../trade/result'
import { type Contradiction, settledRecords } from '../trade/settled'
import type { Check } from './formula'
import { lotInUse } from './gates'
import { type LeftOut, type PhReading, phReadings } from './ph-readings'
import type { PlannedLine } from './plan'
import type { BatchState } from './state'
import type { KindOf } from './step'

/** What an earlier batch of the formula has to say about this one's adjustment. */
export interface EarlierBatch {
  readonly name: string
  readonly curve: ChargeCurve
}

/** An adjustment of pH as far as it has come: what was read, what is in, and what to do next. */
export interface Adjusting {
  readonly check: Check
  readonly line: PlannedLine
  /** Absent where the material is neither that we know of. */
  readonly kind?: Adjuster['kind']
  /** Every reading, oldest first; those left out say why. */
  readonly readings: readonly PhReading[]
  readonly addedUg: Micrograms
  /** Taken off q.s. at planning. */
  readonly expectedUg: Micrograms
  /** The most that the formula allows; absent where it says nothing. */
  readonly mostUg?: Micrograms
  readonly advice: Result<AdjustAdvice, AdjustRefusal>
  /** The earlier batch that the advice goes by. */
  readonly earlier?: string
}

/** The adviser's word, or that the meter has not settled: the readings contradict each other. */
export type AdjustAdvice = PhAdvice | { readonly do: 'read-again'; readonly contradiction: Contradiction }

/**
 * PH_WINDOW_OPEN: the check states one limit or none · PH_NOT_READ_SINCE: a portion went in after the last reading ·
 * PH_LEFT_OUT: the last reading cannot be reckoned with
 */
export type AdjustRefusal =
  | PhRefusal
  | AdjusterRefusal
  | { readonly code: 'PH_WINDOW_OPEN' | 'PH_NOT_READ_SINCE' }
  | { readonly code: 'PH_LEFT_OUT'; readonly why: LeftOut; readonly reading: PhReading }

/**
 * The next addition of an adjust step, by its own readings and by earlier batches of the formula, the newest first. Null
 * where the step is no adjustment of pH.
 */
export function adviceFor(
  state: BatchState,
  stepId: string,
  history: readonly EarlierBatch[] = [],
  lotId?: string,
): Adjusting | null {
  const found = phStepOf(state, stepId)
  if (found === null) return null
  const { step, check, line } = found
  const readings = phReadings(state, step, check)
  const [earlier] = history
  const { amount } = line.line
  const adjuster = adjusterOfLot(state, line, lotId)
  return {
    check,
    line,
    ...(adjuster.ok ? { kind: adjuster.value.kind } : {}),
    readings,
    addedUg: state.steps.get(stepId)?.netUg ?? 0,
    expectedUg: line.targetUg,
    ...(amount.kind === 'as-needed' ? { mostUg: Math.round(amount.max * state.totalUg) } : {}),
    advice: advise(state, found, readings, earlier, lotId),
    ...(earlier === undefined ? {} : { earlier: earlier.name }),
  }
}

/** What a finished batch tells the next ones: the charge curve that its adjustment of the same check went along. */
export function earlierBatchOf(state: BatchState, check: string): EarlierBatch | null {
  for (const { id } of state.plan.steps) {
    const found = phStepOf(state, id)
    if (found === null || found.check.id !== check) continue
    const problem = problemOf(state, found, phReadings(state, found.step, found.check))
    const curve = problem.ok ? chargeCurve(chargePoints(problem.value)) : null
    if (curve !== null) return { name: state.header.shortName, curve }
  }
  return null
}

interface PhStep {
  readonly step: KindOf<'adjust'>
  readonly check: Check
  readonly line: PlannedLine
}

function phStepOf(state: BatchState, stepId: string): PhStep | null {
  const planned = state.plan.byId.get(stepId)
  if (planned?.line === undefined || planned.step.kind !== 'adjust' || planned.step.property !== 'pH') return null
  const { step, line } = planned
  const check = state.header.revision.specification.find(({ id }) => id === step.check)
  return check === undefined ? null : { step, check, line }
}

function advise(
  state: BatchState,
  found: PhStep,
  readings: readonly PhReading[],
  earlier: EarlierBatch | undefined,
  lotId: string | undefined,
): Result<AdjustAdvice, AdjustRefusal> {
  const problem = problemOf(state, found, readings, lotId)
  if (!problem.ok) return problem
  const last = readings.at(-1)
  if (last === undefined) return refuse({ code: 'PH_NOT_READ' })
  if (last.leftOut !== undefined) return refuse({ code: 'PH_LEFT_OUT', why: last.leftOut, reading: last })
  if (last.addedUg !== state.steps.get(found.step.id)?.netUg) return refuse({ code: 'PH_NOT_READ_SINCE' })
  const { records, contradiction } = settledRecords(problem.value.records, problem.value.adjuster.kind)
  if (contradiction !== null) return accept({ do: 'read-again', contradiction })
  return advisePh({ ...problem.value, records, earlier: earlier?.curve })
}

function problemOf(
  state: BatchState,
  { step, check, line }: PhStep,
  readings: readonly PhReading[],
  lotId?: string,
): Result<PhProblem, AdjustRefusal> {
  const { min, max } = check.limits ?? {}
  if (min === undefined || max === undefined) return refuse({ code: 'PH_WINDOW_OPEN' })
  const adjuster = adjusterOfLot(state, line, lotId)
  if (!adjuster.ok) return adjuster
  const counted = readings.filter(({ leftOut }) => leftOut === undefined)
  const now = counted.at(-1) ?? { massUg: 0, ratio: 0 }
  // A sample takes of everything alike, so what is in is told by its ratio to the rest, which only adding changes.
  const restUg = now.massUg / (1 + now.ratio)
  const records = counted.map(({ addedUg, ph }): PhRecord => {
    const ratio = counted.find((each) => each.addedUg === addedUg)?.ratio ?? 0
    const share = strengthUpTo(state, { step, check, line }, addedUg) / adjuster.value.strength
    return { addedUg: Math.round(ratio * restUg * share), ph }
  })
  return accept({
    massUg: now.massUg,
    window: { low: min, high: max },
    adjuster: adjuster.value,
    stepUg: line.balance.stepUg,
    records,
    mostUg: mostAtOnceUg(state, { step, check, line }),
  })
}

/** What the adjuster of a lot is and how strong: the lot's certificate first, then what the material is made of. */
function adjusterOfLot(state: BatchState, line: PlannedLine, lotId?: string): Result<Adjuster, AdjusterRefusal> {
  const { material } = line
  return adjusterOf(material.inci, {
    assay: lotInUse(state, line.line.id, lotId)?.assay,
    dissolved: material.form === 'solution',
  })
}

/** Mean strength of what went in until so much was in, where lots of several strengths were used. */
function strengthUpTo(state: BatchState, { step, line }: PhStep, addedUg: Micrograms): number {
  let [inUg, activeUg] = [0, 0]
  for (const { body } of state.steps.get(step.id)?.portions ?? []) {
    if (inUg >= addedUg) break
    const adjuster = adjusterOfLot(state, line, body.lot)
    inUg += body.netUg
    activeUg += adjuster.ok ? adjuster.value.strength * body.netUg : 0
  }
  const now = adjusterOfLot(state, line)
  return inUg > 0 ? activeUg / inUg : now.ok ? now.value.strength : 0
}

/** The formula's portion, which is written for its usual size, or what is left of its most, whichever is less. */
function mostAtOnceUg(state: BatchState, { step, line }: PhStep): Micrograms | undefined {
  const { amount } = line.line
  const inUg = state.steps.get(step.id)?.netUg ?? 0
  const portionUg =
    step.portionUg === undefined
      ? undefined
      : mulDiv(step.portionUg, state.header.sizeUg, state.header.revision.usualSizeUg)
  const leftUg = amount.kind === 'as-needed' ? Math.round(amount.max * state.totalUg) - inUg : undefined
  const caps = [portionUg, leftUg].filter((cap): cap is Micrograms => cap !== undefined && cap > 0)
  return caps.length === 0 ? undefined : Math.min(...caps)
}
