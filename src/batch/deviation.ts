import { contentsOf, massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { letQsAbsorb, type RemedyProblem, scaleTheRest, scaleToSmaller } from '../trade/remedy'
import { verifyRemedy } from '../trade/remedy-check'
import { type Aim, withinAllLimits } from '../trade/remedy-coupled'
import { addTheLeast, departTheLeast, type LeastRemedy, spendTheLeast } from '../trade/remedy-least'
import { costOf } from '../trade/remedy-model'
import { allRowsOf, type FinishedRow, rowsOf } from './finished-rows'
import type { RemedyKind } from './kinds'
import { acceptedChangeUg } from './losses'
import { looseUg } from './lost'
import { openDeviations } from './open-deviations'
import { vesselNow } from './progress'
import type { OnHand } from './remedy-limits'
import { impossible, offerOf, type Question, type RemedyOffer, readableTotalUg, unchanged } from './remedy-offer'
import { inMerit } from './remedy-order'
import { problemOf, withAdjustersHeld } from './remedy-problem'
import type { BatchState, DeviationState } from './state'

export type { FinishedRow } from './finished-rows'
export type { RemedyOffer } from './remedy-offer'

export interface Consequences {
  readonly finishedUg: Micrograms
  readonly rows: readonly FinishedRow[]
}

/** How the product ends if a deviation is left as it is: every limit that it puts outside, worst first. */
export function consequencesOf(state: BatchState, deviationId: string): Consequences | null {
  const deviation = state.deviations.get(deviationId)
  if (!deviation) return null
  const question = questionOf(state, deviation, null)
  const rows = rowsOf(question, question.leftUg).filter((row) => row.breaks || row.line === deviation.line)
  return { finishedUg: sum(question.leftUg), rows }
}

/** Where every line and every limit over several lines ends by a way on: its whole proof, in the order of the formula. */
export function proofOf(state: BatchState, deviationId: string, { finalUg }: RemedyOffer): readonly FinishedRow[] {
  const deviation = state.deviations.get(deviationId)
  if (!deviation || finalUg.length === 0) return []
  const question = questionOf(state, deviation, null)
  return allRowsOf(question, finalUg)
}

/** The limits that would be broken if everything were left as it is now. */
export function brokenIfLeft(state: BatchState): readonly FinishedRow[] {
  const problem = problemOf(state)
  const leftUg = leftAsItIs(state, problem)
  return rowsOf({ state, about: '', problem, leftUg }, leftUg).filter(({ breaks }) => breaks)
}

/**
 * The ways on, in order of merit, those that cannot be gone last with their reason. Limits over several lines that an
 * answer would break are kept by `remediesWithin`, which loads a solver for it.
 */
export function remediesFor(state: BatchState, deviationId: string, onHand: OnHand = null): readonly RemedyOffer[] {
  const deviation = state.deviations.get(deviationId)
  if (!deviation) return []
  const question = questionOf(state, deviation, onHand)
  return inMerit(offersOf(question, deviation, closedForms(question)))
}

/** The same with the limits over several lines kept as well. */
export async function remediesWithin(
  state: BatchState,
  deviationId: string,
  onHand: OnHand = null,
): Promise<readonly RemedyOffer[]> {
  const deviation = state.deviations.get(deviationId)
  if (!deviation) return []
  const question = questionOf(state, deviation, onHand)
  const held = withAdjustersHeld(state, question.problem)
  const least: { [A in Aim]?: LeastRemedy } = {}
  for (const aim of ['least-extra', 'least-departure', 'least-cost'] as const)
    least[aim] = await withinAllLimits(aim === 'least-cost' ? held : question.problem, aim)
  return inMerit(offersOf(question, deviation, { ...closedForms(question), ...least }))
}

/** Whether the closed forms break a limit over several lines, so that only the solver's answer counts. */
export function needsSolver(state: BatchState, onHand: OnHand = null): boolean {
  const problem = problemOf(state, onHand)
  if ((problem.couplings ?? []).length === 0) return false
  return [addTheLeast, departTheLeast, spendTheLeast].some((closedForm) => {
    const answer = closedForm(problem)
    return answer.feasible && verifyRemedy(problem, answer.additionsUg).some(({ limit }) => limit === 'shared')
  })
}

function questionOf(state: BatchState, deviation: DeviationState, onHand: OnHand): Question {
  const problem = problemOf(state, onHand)
  return { state, about: deviation.line, problem, leftUg: leftAsItIs(state, problem) }
}

/** Every line at its plan or at what is in, less what was lost; q.s. takes what remains of the total that this makes. */
function leftAsItIs(state: BatchState, problem: RemedyProblem): readonly Micrograms[] {
  const open = openDeviations(state).filter(({ inCup }) => !inCup)
  const short = new Set(
    open.filter(({ cause, direction }) => cause !== 'loss' && direction === 'under').map(({ line }) => line),
  )
  const lost = open.flatMap((each) => each.lost ?? [])
  const lostOf = (id: string): Micrograms => sum(lost.filter(({ line }) => line === id).map(({ massUg }) => massUg))
  const masses = problem.lines.map(({ id, fraction, massUg, locked }) =>
    locked || short.has(id) ? massUg : Math.max(massUg, Math.round(fraction * problem.totalUg) - lostOf(id)),
  )
  const { qsIndex } = problem
  if (qsIndex === null || problem.lines[qsIndex]?.locked) return masses
  const lostUg = sum(lost.map(({ massUg }) => massUg))
  const endsUg = open.reduce((total, each) => total + acceptedChangeUg(each), problem.totalUg) - lostUg
  const othersUg = sum(masses) - (masses[qsIndex] ?? 0)
  return masses.with(qsIndex, Math.max(problem.lines[qsIndex]?.massUg ?? 0, endsUg - othersUg))
}

/**
 * Scaling is about the formula's own lines: foreign mass that was decided on stays what it is beside them. The lines
 * stand first, so that their additions keep their places.
 */
function ownLinesOf({ state, problem }: Question): RemedyProblem {
  const strange = problem.lines.filter(({ id, fraction }) => state.unplanned.has(id) && fraction > 0)
  if (strange.length === 0) return problem
  const strangeUg = sum(strange.map(({ massUg }) => massUg))
  const totalUg = problem.totalUg - strangeUg
  const lines = problem.lines
    .filter((line) => !strange.includes(line))
    .map((line) => ({ ...line, fraction: (line.fraction * problem.totalUg) / totalUg }))
  return { ...problem, totalUg, capacityUg: problem.capacityUg - strangeUg, lines }
}

type Least = { readonly [A in Aim]: LeastRemedy }

const closedForms = ({ state, problem }: Question): Least => {
  const extra = addTheLeast(problem)
  const readableUg = extra.feasible ? readableTotalUg(state, problem, extra.totalUg) : 0
  // A total that a balance shows, where there is room for it.
  const readable = { ...problem, minTotalUg: readableUg }
  const held = (of: RemedyProblem): RemedyProblem => withAdjustersHeld(state, of)
  const better = <R extends LeastRemedy>(found: R, rounded: R): R => (rounded.feasible ? rounded : found)
  return {
    'least-extra': extra.feasible ? better(extra, addTheLeast(readable)) : extra,
    'least-departure': departTheLeast(problem),
    'least-cost': extra.feasible
      ? better(spendTheLeast(held(problem)), spendTheLeast(held(readable)))
      : spendTheLeast(problem),
  }
}

function offersOf(question: Question, deviation: DeviationState, least: Least): readonly RemedyOffer[] {
  const { problem } = question
  // No figures make a lot good that was not to be used.
  if (deviation.cause === 'lot') return [...discardOffer(question, deviation), acceptOffer(question, deviation)]
  const own = ownLinesOf(question)
  const scaled = scaleTheRest(own)
  const smaller = scaled.feasible ? null : scaleToSmaller(own)
  const qs = letQsAbsorb(problem)
  const answer = (remedy: RemedyKind, found: typeof qs | typeof scaled | LeastRemedy): RemedyOffer =>
    found.feasible ? offerOf(question, remedy, found.additionsUg) : impossible(question, remedy, found.why)
  const scale = answer('scale', scaled)
  const extra = answer('extra', least['least-extra'])
  return [
    ...(deviation.cause === 'loss' ? [scale, answer('qs', qs)] : [answer('qs', qs), scale]),
    ...(smaller?.feasible ? [answer('smaller', smaller)] : []),
    extra,
    answer('departure', least['least-departure']),
    ...cheaper(answer('cost', least['least-cost']), extra),
    ...discardOffer(question, deviation),
    acceptOffer(question, deviation),
  ]
}

/**
 * Moving lines for money is a way of its own only where there is some to save: a hundredth of what goes in. It moves
 * every line as far as the worst one, so that of two with the same worst line it changes the formula more.
 */
function cheaper(offer: RemedyOffer, extra: RemedyOffer): readonly RemedyOffer[] {
  const { departure, cost } = offer.merits
  if (!offer.feasible || (cost ?? 0) >= 0.99 * (extra.merits.cost ?? Number.POSITIVE_INFINITY)) return []
  return [{ ...offer, merits: { ...offer.merits, departure: departure + 0.01 } }]
}

function acceptOffer(question: Question, deviation: DeviationState): RemedyOffer {
  const { state, problem, leftUg } = question
  const additionsUg = leftUg.map((massUg, index) => massUg - (problem.lines[index]?.massUg ?? 0))
  const { merits, breaks, binds } = offerOf(question, 'accept', additionsUg)
  const left = verifyRemedy({ ...problem, minTotalUg: 0 }, additionsUg).length
  return {
    ...unchanged(question, 'accept'),
    totalUg: state.totalUg + acceptedChangeUg(deviation),
    endsUg: sum(leftUg),
    finalUg: leftUg,
    rows: rowsOf(question, leftUg).filter((row) => row.breaks || row.line === deviation.line),
    breaks: Math.max(breaks, left),
    binds,
    merits: { ...merits, feasible: true, breaks: Math.max(breaks, left) },
  }
}

/**
 * The vessel or cup that a deviation is in, while nothing was combined in it: what is in there can go to waste. What is
 * reworked cannot be made again from the first step.
 */
export function vesselToDiscard(state: BatchState, deviation: DeviationState): string | null {
  if (state.parts.length > 0) return null
  const of = deviation.cause === 'forgotten' ? lockingVessel(state, deviation) : undefined
  const added = state.unplanned.get(deviation.line)?.body.vessel
  const own = state.plan.byId.get(deviation.step)?.step.vessel
  const vessel = vesselNow(state, of ?? added ?? own ?? '')
  const isCombined = state.plan.steps.some(
    ({ step }) =>
      step.kind === 'combine' && step.vessel === vessel && state.vessels.get(step.from)?.emptiedInto === vessel,
  )
  return isCombined || massIn(state.ledger, vessel) === 0 ? null : vessel
}

/** Where the step was done that the forgotten line can no longer go in after. */
function lockingVessel(state: BatchState, { line }: DeviationState): string | undefined {
  const lock = state.plan.lines.get(line)?.line.locksAfter
  return lock === undefined ? undefined : state.plan.byId.get(lock)?.step.vessel
}

function discardOffer(question: Question, deviation: DeviationState): readonly RemedyOffer[] {
  const { state, problem } = question
  const vessel = vesselToDiscard(state, deviation)
  if (vessel === null) return []
  const contents = contentsOf(state.ledger, vessel)
  const inIt = problem.lines.map(({ id }) => contents.get(id) ?? 0)
  const waste = { vessel, massUg: massIn(state.ledger, vessel), cost: costOf(problem.lines, inIt) }
  const short = problem.lines.find(
    ({ id, stockUg }, index) => state.plan.lines.has(id) && stockUg !== null && stockUg < (inIt[index] ?? 0),
  )
  if (short) {
    const neededUg = contents.get(short.id) ?? 0
    const why = { code: 'STOCK_TOO_SHORT' as const, id: short.id, neededUg, stockUg: short.stockUg ?? 0 }
    return [{ ...impossible(question, 'discard', why), waste }]
  }
  const mended = openDeviations(state).every((each) => each === deviation || looseUg(state, each.line) > 0)
  const breaks = mended ? 0 : 1
  const merits = { feasible: true, breaks, departure: 0, addedUg: waste.massUg, cost: waste.cost }
  return [{ ...unchanged(question, 'discard'), breaks, merits, waste }]
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
