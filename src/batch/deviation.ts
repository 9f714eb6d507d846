import { type Micrograms, roundToStep } from '../trade/mass'
import { letQsAbsorb, type RemedyRefusal, scaleTheRest } from '../trade/remedy'
import type { Bodies, RemedyKind } from './kinds'
import { isDone, targetOf } from './progress'
import {
  effectiveTargetUg,
  inBatchUg,
  type Limits,
  limitsOf,
  lineTargetUg,
  problemOf,
  weighStepsOf,
} from './remedy-problem'
import { qsLineOf } from './room'
import type { BatchState, DeviationState } from './state'

/** One line of a finished composition: as it would end, against its limits. */
export interface FinishedRow {
  readonly line: string
  readonly name: string
  readonly before: number
  readonly after: number
  readonly low: number
  readonly high: number
  readonly from: Limits['from']
  readonly breaks: boolean
}

export type NewTargets = Bodies['remedy-chosen']['targets']

/** A way on. An impossible one says why; `rows` are the lines it changes or leaves outside their limits. */
export interface RemedyOffer {
  readonly remedy: RemedyKind
  readonly feasible: boolean
  readonly why?: RemedyRefusal
  readonly totalUg: Micrograms
  readonly heldBackUg: Micrograms
  readonly targets: NewTargets
  readonly rows: readonly FinishedRow[]
}

export interface Consequences {
  readonly finishedUg: Micrograms
  readonly rows: readonly FinishedRow[]
}

/** How the product ends if a deviation is left as it is: every line that it puts outside its limits, worst first. */
export function consequencesOf(state: BatchState, deviationId: string): Consequences | null {
  const deviation = state.deviations.get(deviationId)
  if (!deviation) return null
  const finishedUg = acceptedTotalUg(state, deviation)
  return { finishedUg, rows: rowsOf(state, deviation.line, finishedUg, finalMasses(state), finishedUg) }
}

/** The ways on, in order of merit: inside all limits, then least change to the formula, then least material. */
export function remediesFor(state: BatchState, deviationId: string): readonly RemedyOffer[] {
  const deviation = state.deviations.get(deviationId)
  if (!deviation) return []
  const offers =
    deviation.direction === 'over'
      ? [scaleOffer(state, deviation), qsOffer(state, deviation), acceptOffer(state, deviation)]
      : [acceptOffer(state, deviation)]
  return [...offers].sort((a, b) => merit(a) - merit(b))
}

/** Lower is better; ties keep their order. Accepting stands after what mends the product. */
function merit(offer: RemedyOffer): number {
  const broken = offer.rows.filter((row) => row.breaks).length
  return (offer.feasible ? 0 : 2000) + Math.min(broken, 99) * 10 + (offer.remedy === 'accept' ? 5 : 0)
}

function acceptOffer(state: BatchState, deviation: DeviationState): RemedyOffer {
  const totalUg = acceptedTotalUg(state, deviation)
  const rows = rowsOf(state, deviation.line, totalUg, finalMasses(state), totalUg)
  return { remedy: 'accept', feasible: true, totalUg, heldBackUg: state.heldBackUg, targets: [], rows }
}

function scaleOffer(state: BatchState, deviation: DeviationState): RemedyOffer {
  const answer = scaleTheRest(problemOf(state))
  if (!answer.feasible) return impossible(state, deviation, 'scale', answer.why)
  const targets = scaledTargets(state, answer.factor)
  return offerOf(state, deviation, 'scale', answer.totalUg, targets)
}

function qsOffer(state: BatchState, deviation: DeviationState): RemedyOffer {
  const answer = letQsAbsorb(problemOf(state))
  if (!answer.feasible) return impossible(state, deviation, 'qs', answer.why)
  return offerOf(state, deviation, 'qs', state.totalUg, [])
}

function impossible(state: BatchState, deviation: DeviationState, remedy: RemedyKind, why: RemedyRefusal): RemedyOffer {
  return {
    remedy,
    feasible: false,
    why,
    totalUg: state.totalUg,
    heldBackUg: state.heldBackUg,
    targets: [],
    rows: rowsOf(state, deviation.line, state.totalUg, finalMasses(state), state.totalUg),
  }
}

/**
 * New targets, rounded to each line's balance; what the roundings and the held-back water come to goes to q.s., so that
 * the total holds to the microgram.
 */
function offerOf(
  state: BatchState,
  deviation: DeviationState,
  remedy: RemedyKind,
  totalUg: Micrograms,
  scaled: NewTargets,
): RemedyOffer {
  const byStep = new Map(scaled.map((target) => [target.step, target.toUg]))
  const final = finalMasses(state, byStep)
  const qs = qsLineOf(state)
  const othersUg = [...final].reduce((sum, [line, massUg]) => (line === qs ? sum : sum + massUg), 0)
  const { heldBackUg, targets } = shareQs(state, qs, totalUg - othersUg, scaled)
  const acceptedUg = acceptedTotalUg(state, deviation)
  if (qs !== undefined) final.set(qs, totalUg - othersUg)
  const rows = rowsOf(state, deviation.line, acceptedUg, final, totalUg)
  return { remedy, feasible: true, totalUg, heldBackUg, targets, rows }
}

/** Every weigh step of an unlocked line at `factor` times its target, where that is more than it has. */
function scaledTargets(state: BatchState, factor: number): NewTargets {
  const targets: NewTargets[number][] = []
  for (const [line, planned] of state.plan.lines) {
    for (const { id } of weighStepsOf(state, line)) {
      const fromUg = targetOf(state, id) ?? 0
      const isQs = planned.line.amount.kind === 'qs'
      const toUg = roundToStep((isQs ? fromUg : effectiveTargetUg(state, id)) * factor, planned.balance.stepUg)
      if (!(isQs && isDone(state, id)) && toUg !== fromUg) targets.push({ step: id, line, fromUg, toUg })
    }
  }
  return targets
}

/** What q.s. comes to is met by its open portions; the rest is held back, and a shortage comes off the open portions. */
function shareQs(
  state: BatchState,
  qs: string | undefined,
  qsUg: Micrograms,
  targets: NewTargets,
): { readonly heldBackUg: Micrograms; readonly targets: NewTargets } {
  if (qs === undefined) return { heldBackUg: state.heldBackUg, targets }
  const wanted = new Map(targets.map((target) => [target.step, target.toUg]))
  const portions = weighStepsOf(state, qs).map(({ id }) => {
    const netUg = state.steps.get(id)?.netUg ?? 0
    const fromUg = targetOf(state, id) ?? 0
    const toUg = isDone(state, id) ? netUg : Math.max(wanted.get(id) ?? fromUg, netUg)
    return { step: id, line: qs, fromUg, netUg, toUg }
  })
  const otherwiseInUg = inBatchUg(state, qs) - portions.reduce((sum, { netUg }) => sum + netUg, 0)
  const heldBackUg = qsUg - otherwiseInUg - portions.reduce((sum, { toUg }) => sum + toUg, 0)
  if (heldBackUg >= 0) return { heldBackUg, targets }
  let shortUg = -heldBackUg
  const cut: NewTargets[number][] = []
  for (const { netUg, ...portion } of portions) {
    const lessUg = Math.min(shortUg, portion.toUg - netUg)
    shortUg -= lessUg
    if (lessUg > 0) cut.push({ ...portion, toUg: portion.toUg - lessUg })
  }
  const others = targets.filter((target) => cut.every(({ step }) => step !== target.step))
  return { heldBackUg: 0, targets: [...others, ...cut] }
}

/** What each component ends at: what is in, or its target where that is more. */
function finalMasses(state: BatchState, targets: ReadonlyMap<string, Micrograms> = new Map()): Map<string, Micrograms> {
  const masses = new Map<string, Micrograms>()
  for (const [line, planned] of state.plan.lines) {
    const steps = weighStepsOf(state, line)
    const changed = steps.some(({ id }) => targets.has(id)) && planned.line.amount.kind === 'fraction'
    const targetUg = changed
      ? steps.reduce((sum, { id }) => sum + (targets.get(id) ?? targetOf(state, id) ?? 0), 0)
      : lineTargetUg(state, line)
    masses.set(line, Math.max(targetUg, inBatchUg(state, line)))
  }
  for (const component of state.unplanned.keys()) masses.set(component, inBatchUg(state, component))
  return masses
}

function rowsOf(
  state: BatchState,
  about: string,
  beforeTotalUg: Micrograms,
  after: ReadonlyMap<string, Micrograms>,
  afterTotalUg: Micrograms,
): readonly FinishedRow[] {
  const before = finalMasses(state)
  const rows = [...state.plan.lines].map(([line, planned]): FinishedRow => {
    const { low, high, from } = limitsOf(planned)
    const ends = (after.get(line) ?? 0) / afterTotalUg
    return {
      line,
      name: planned.material.name,
      before: (before.get(line) ?? 0) / beforeTotalUg,
      after: ends,
      low,
      high,
      from,
      breaks: planned.line.amount.kind !== 'as-needed' && (ends < low - sameFraction || ends > high + sameFraction),
    }
  })
  const shown = rows.filter((row) => row.breaks || row.line === about)
  return shown.sort((a, b) => Number(b.line === about) - Number(a.line === about) || excess(b) - excess(a))
}

/** Closer than this to a limit is on it: a microgram in a kilogram. */
const sameFraction = 1e-9

const excess = (row: FinishedRow): number => Math.max(row.after / row.high, row.after === 0 ? 0 : row.low / row.after)

/** Left as it is, the batch ends heavier or lighter by the deviation. */
const acceptedTotalUg = (state: BatchState, deviation: DeviationState): Micrograms =>
  deviation.direction === 'over' ? state.totalUg + deviation.byUg : state.totalUg - deviation.byUg
