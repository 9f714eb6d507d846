import type { Micrograms } from '../trade/mass'
import type { RemedyProblem } from '../trade/remedy'
import { verifyRemedy } from '../trade/remedy-check'
import { bandOf, judge } from '../trade/tolerance'
import type { Bodies, RemedyKind } from './kinds'
import { goesInBy, weighStepsOf } from './line-targets'
import { acceptedChangeUg } from './losses'
import { isDone, targetOf } from './progress'
import { problemOf } from './remedy-problem'
import { standingOf } from './standing'
import type { BatchState, DeviationState } from './state'

type Figures = Pick<Bodies['remedy-chosen'], 'totalUg' | 'heldBackUg' | 'targets'>

/**
 * Whether figures can be followed from here: nothing comes out, nothing goes into a line whose step has passed, the
 * vessel holds it, targets and what is held back make the total, and of a kind that promises it every limit is kept.
 */
export function keepsLimits(
  state: BatchState,
  deviation: DeviationState,
  remedy: RemedyKind,
  figures: Figures,
): boolean {
  const { totalUg, heldBackUg, targets } = figures
  if (remedy === 'accept')
    return (
      totalUg === state.totalUg + acceptedChangeUg(deviation) && heldBackUg === state.heldBackUg && targets.length === 0
    )
  if (totalUg <= 0 || heldBackUg < 0 || !targets.every((target) => canBeAsked(state, target))) return false
  if (new Set(targets.map(({ step }) => step)).size < targets.length) return false
  const problem = problemOf(state)
  const additionsUg = problem.lines.map(({ id }, index) => additionUg(state, problem, index, id, figures))
  const inUg = problem.lines.reduce(
    (sum, { massUg }, index) => sum + massUg + (additionsUg[index] ?? 0),
    standingOf(state).apartUg,
  )
  if (Math.abs(inUg - totalUg) > finestUg(state) / 2) return false
  const hard = remedy === 'extra' || remedy === 'cost' ? ['low', 'high', 'shared'] : []
  const asked = ['in', 'locked', 'stock', 'capacity', 'stirs-least', 'stirs-most', ...hard]
  return !verifyRemedy({ ...problem, minTotalUg: 0 }, additionsUg).some(({ limit }) => asked.includes(limit))
}

/** The target of a weigh step that has not been asked for less than is in. */
function canBeAsked(state: BatchState, { step, line, fromUg, toUg }: Figures['targets'][number]): boolean {
  const planned = state.plan.byId.get(step)
  const countedUg = state.steps.get(step)?.countedUg ?? 0
  const isOfLine = planned?.step.kind === 'weigh' && planned.step.line === line
  return isOfLine && targetOf(state, step) === fromUg && Number.isSafeInteger(toUg) && toUg >= countedUg
}

/** What no balance of this batch tells. */
const finestUg = (state: BatchState): Micrograms =>
  Math.min(...[...state.plan.lines.values()].map(({ balance }) => balance.stepUg))

/** What goes in of a line from now on if its targets are met to the letter. */
function additionUg(
  state: BatchState,
  problem: RemedyProblem,
  index: number,
  id: string,
  figures: Figures,
): Micrograms {
  const line = problem.lines[index]
  const planned = state.plan.lines.get(id)
  if (!line || !planned) return 0
  if (goesInBy(state, id) === 'as-needed') {
    const expectedUg = Math.round(line.fraction * (figures.totalUg - standingOf(state).apartUg))
    return line.locked ? 0 : Math.max(0, expectedUg - line.massUg)
  }
  const weighedUg = weighStepsOf(state, id).reduce((sum, step) => sum + toWeighUg(state, step.id, figures), 0)
  return index === problem.qsIndex ? weighedUg + figures.heldBackUg : weighedUg
}

/** Nothing where the step is done and its new target's band does not ask for more. */
function toWeighUg(state: BatchState, stepId: string, { targets }: Figures): Micrograms {
  const step = state.steps.get(stepId)
  const line = state.plan.byId.get(stepId)?.line
  const countedUg = step?.countedUg ?? 0
  const target = targets.find((each) => each.step === stepId)
  if (!line || (isDone(state, stepId) && target === undefined)) return 0
  const toUg = target?.toUg ?? targetOf(state, stepId) ?? 0
  const isMet =
    judge(countedUg, bandOf(toUg, line.line.tolerance, line.balance.stepUg), line.balance.stepUg) === 'within'
  return isDone(state, stepId) && isMet ? 0 : Math.max(0, toUg - countedUg)
}
