import { type Micrograms, roundUpToStep } from '../trade/mass'
import type { RemedyLine, RemedyProblem, RemedyRefusal } from '../trade/remedy'
import { bindingAt, verifyRemedy } from '../trade/remedy-check'
import type { Limit } from '../trade/remedy-model'
import { type Merits, meritsOf, type RankReason } from '../trade/remedy-rank'
import { roundRemedy } from '../trade/remedy-round'
import { bandOf, judge } from '../trade/tolerance'
import { type FinishedRow, rowsOf } from './finished-rows'
import { inBatchUg } from './in-batch'
import type { Bodies, RemedyKind } from './kinds'
import { goesInBy, weighStepsOf } from './line-targets'
import { isDone, targetOf } from './progress'
import { shareQs } from './share-qs'
import { fullSideVessel } from './side-vessels'
import { standingOf } from './standing'
import type { BatchState } from './state'

export type NewTargets = Bodies['remedy-chosen']['targets']

/** What goes to waste where a vessel is started again. */
export interface Waste {
  readonly vessel: string
  readonly massUg: Micrograms
  /** In the studio's money; null where a price is missing. */
  readonly cost: number | null
}

/** A way on, with its proof. An impossible one says why; `rows` are the limits it changes, stands on or breaks. */
export interface RemedyOffer {
  readonly remedy: RemedyKind
  readonly feasible: boolean
  readonly why?: RemedyRefusal
  /** What goes into the batch in all, as the plan will count it, and what the batch comes to. */
  readonly totalUg: Micrograms
  readonly endsUg: Micrograms
  readonly heldBackUg: Micrograms
  readonly targets: NewTargets
  readonly rows: readonly FinishedRow[]
  /** How many limits it breaks, of lines and over several lines. */
  readonly breaks: number
  readonly binds: readonly Limit[]
  readonly merits: Merits
  /** How much q.s. goes in from now on. */
  readonly qsAddedUg: Micrograms
  /** Where each line of the problem ends, in its order; empty where nothing is reckoned. */
  readonly finalUg: readonly Micrograms[]
  readonly waste?: Waste
  /** In what it is better than the next one. */
  readonly reason: RankReason
}

/** What all offers about one deviation are reckoned with. */
export interface Question {
  readonly state: BatchState
  readonly about: string
  readonly problem: RemedyProblem
  /** Final masses where everything is left as it is. */
  readonly leftUg: readonly Micrograms[]
}

/** Kinds that are none where a range or a limit over several lines breaks. */
const keepsRanges: ReadonlySet<RemedyKind> = new Set(['extra', 'cost'])

/** Limits of the bench, which no remedy may break. */
const physical: readonly string[] = ['in', 'locked', 'stock', 'capacity', 'stirs-least', 'stirs-most']

/**
 * An answer of the engine as targets that balances show: what the roundings come to and what is held back goes to q.s.,
 * so that the total holds to the microgram. It is tried against every limit before and after it is rounded.
 */
export function offerOf(question: Question, remedy: RemedyKind, exactUg: readonly Micrograms[]): RemedyOffer {
  const { state } = question
  const problem = { ...question.problem, minTotalUg: 0 }
  const breaksOf = (additionsUg: readonly Micrograms[]) =>
    verifyRemedy(problem, additionsUg).filter(({ limit }) => keepsRanges.has(remedy) || physical.includes(limit))
  if (breaksOf(exactUg).length > 0) return impossible(question, remedy, { code: 'NOT_SOLVED' })

  const rounded = roundRemedy(problem, weighable(question, exactUg), stepsOf(state, problem))
  const additionsUg = seen(question, rounded.additionsUg)
  if (breaksOf(additionsUg).length > 0) return impossible(question, remedy, { code: 'NOT_SOLVED' })
  const endsUg = sum(finalOf(problem, additionsUg))
  const totalUg = endsUg + standingOf(state).apartUg
  const ratio = totalUg / state.totalUg
  const plain = targetsOf(question, additionsUg)
  // A line of the formula that would be left out altogether is not rounded away.
  if (plain.some(({ toUg }) => toUg === 0)) return impossible(question, remedy, { code: 'NOT_SOLVED' })
  const qsAddedUg = problem.qsIndex === null ? 0 : (additionsUg[problem.qsIndex] ?? 0)
  const qs = problem.qsIndex === null ? undefined : problem.lines[problem.qsIndex]?.id
  const shared = shareQs(state, qs, qs === undefined ? 0 : inBatchUg(state, qs) + qsAddedUg, ratio)
  const targets = [...plain, ...shared.targets]
  const full = fullSideVessel(state, targets)
  if (full) return impossible(question, remedy, full)
  const finalUg = finalOf(problem, additionsUg)
  return {
    remedy,
    feasible: true,
    totalUg,
    endsUg,
    heldBackUg: shared.heldBackUg,
    targets,
    rows: rowsOf(question, finalUg),
    breaks: verifyRemedy(problem, additionsUg).length,
    binds: bindingAt(problem, finalUg),
    merits: meritsOf(problem, additionsUg),
    qsAddedUg,
    finalUg,
    reason: 'as-good',
  }
}

export function impossible(question: Question, remedy: RemedyKind, why: RemedyRefusal): RemedyOffer {
  return {
    ...unchanged(question, remedy),
    feasible: false,
    why,
    rows: rowsOf(question, question.leftUg),
    merits: { feasible: false, breaks: 0, departure: 0, addedUg: 0, cost: null },
  }
}

/** An offer that changes no target. */
export function unchanged({ state, problem }: Question, remedy: RemedyKind): RemedyOffer {
  return {
    remedy,
    feasible: true,
    totalUg: state.totalUg,
    endsUg: problem.totalUg,
    heldBackUg: state.heldBackUg,
    targets: [],
    rows: [],
    breaks: 0,
    binds: [],
    merits: { feasible: true, breaks: 0, departure: 0, addedUg: 0, cost: 0 },
    qsAddedUg: 0,
    finalUg: [],
    reason: 'as-good',
  }
}

export const finalOf = ({ lines }: RemedyProblem, additionsUg: readonly Micrograms[]): readonly Micrograms[] =>
  lines.map(({ massUg }, index) => massUg + (additionsUg[index] ?? 0))

/** The least total that a balance shows, at or above one that is reckoned. */
export function readableTotalUg(state: BatchState, { qsIndex, lines }: RemedyProblem, totalUg: Micrograms): Micrograms {
  const line = qsIndex === null ? undefined : lines[qsIndex]
  const stepUg = line && state.plan.lines.get(line.id)?.balance.stepUg
  return stepUg === undefined ? totalUg : roundUpToStep(totalUg, stepUg)
}

/** q.s. takes what is left to the microgram, an adjuster what the readings ask for: neither stands on a step. */
const stepsOf = (state: BatchState, { lines }: RemedyProblem): readonly Micrograms[] =>
  lines.map(({ id }) => {
    const planned = state.plan.lines.get(id)
    return planned && goesInBy(state, id) === 'fraction' ? planned.balance.stepUg : 1
  })

/**
 * What a weighed line would get that its band does not tell from nothing is not weighed, and an adjuster that is still
 * to come keeps what is expected of it: q.s. takes the difference where it can.
 */
function weighable({ state, problem }: Question, exactUg: readonly Micrograms[]): readonly Micrograms[] {
  const { lines, qsIndex } = problem
  const shown = exactUg.map((addUg, index) => (isHidden(state, lines[index]?.id ?? '', addUg) ? 0 : addUg))
  const canGive = qsIndex !== null && lines[qsIndex]?.locked === false
  let additionsUg = shown
  // Where q.s. cannot take the difference the total moves by it, and what is expected with the total.
  for (let times = 0; times < 3; times += 1) {
    const totalUg = sum(finalOf(problem, additionsUg))
    const kept = shown.map((addUg, index) => expectedUg(state, lines[index], totalUg) ?? addUg)
    const leftUg = sum(exactUg) - sum(kept)
    additionsUg = canGive ? kept.with(qsIndex, Math.max(0, (kept[qsIndex] ?? 0) + leftUg)) : kept
  }
  return additionsUg
}

/**
 * A limit may have a done line rounded up to what its band takes for nothing: it gets the least that is asked for, and
 * q.s. the less where it can.
 */
function seen({ state, problem }: Question, additionsUg: readonly Micrograms[]): readonly Micrograms[] {
  const { lines, qsIndex } = problem
  const shown = additionsUg.map((addUg, index) => leastSeenUg(state, lines[index]?.id ?? '', addUg))
  const moreUg = sum(shown) - sum(additionsUg)
  if (moreUg === 0 || qsIndex === null || lines[qsIndex]?.locked !== false) return shown
  return shown.with(qsIndex, Math.max(0, (shown[qsIndex] ?? 0) - moreUg))
}

function leastSeenUg(state: BatchState, line: string, addUg: Micrograms): Micrograms {
  const stepUg = state.plan.lines.get(line)?.balance.stepUg ?? 1
  let leastUg = addUg
  while (leastUg < state.totalUg && isHidden(state, line, leastUg)) leastUg += stepUg
  return leastUg
}

/** What an adjuster that is still to come is expected to take at a total; undefined for every other line. */
function expectedUg(state: BatchState, line: RemedyLine | undefined, totalUg: Micrograms): Micrograms | undefined {
  if (!line || line.locked || goesInBy(state, line.id) !== 'as-needed') return undefined
  return Math.max(0, Math.round(line.fraction * totalUg) - line.massUg)
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

function isHidden(state: BatchState, line: string, addUg: Micrograms): boolean {
  const planned = state.plan.lines.get(line)
  if (!planned || goesInBy(state, line) !== 'fraction' || addUg <= 0) return false
  return weighStepsOf(state, line).every(({ id }) => {
    const countedUg = state.steps.get(id)?.countedUg ?? 0
    const { stepUg } = planned.balance
    const band = bandOf(countedUg + addUg, planned.line.tolerance, stepUg)
    return isDone(state, id) && judge(countedUg, band, stepUg) === 'within'
  })
}

/** The weigh step of each line that is to come to something else than it was; the others keep their targets. */
function targetsOf({ state, problem }: Question, additionsUg: readonly Micrograms[]): NewTargets {
  return problem.lines.flatMap(({ id: line }, index) => {
    const step = weighStepsOf(state, line).at(-1)
    if (goesInBy(state, line) !== 'fraction' || !step) return []
    const addUg = additionsUg[index] ?? 0
    const countedUg = state.steps.get(step.id)?.countedUg ?? 0
    const fromUg = targetOf(state, step.id) ?? 0
    const toUg = countedUg + addUg
    const isKept = addUg === 0 && (countedUg > 0 || isDone(state, step.id))
    return isKept || toUg === fromUg ? [] : [{ step: step.id, line, fromUg, toUg }]
  })
}
