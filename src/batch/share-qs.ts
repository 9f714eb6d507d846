import { type Micrograms, roundToStep } from '../trade/mass'
import { inBatchUg } from './in-batch'
import type { Bodies } from './kinds'
import { weighStepsOf } from './line-targets'
import { isDone, targetOf } from './progress'
import { canMakeUp } from './remedy-problem'
import type { BatchState } from './state'

type NewTargets = Bodies['remedy-chosen']['targets']

interface Shared {
  readonly heldBackUg: Micrograms
  readonly targets: NewTargets
}

/**
 * How q.s. comes to a mass: its open portions grow or shrink with the batch, the rest is held back, and a shortage comes
 * off the open portions. Where nothing is made up at the end, the last portion takes the rest.
 */
export function shareQs(state: BatchState, qs: string | undefined, qsUg: Micrograms, ratio: number): Shared {
  const planned = qs === undefined ? undefined : state.plan.lines.get(qs)
  if (qs === undefined || !planned) return { heldBackUg: state.heldBackUg, targets: [] }
  const portions = weighStepsOf(state, qs).map(({ id }) => {
    const netUg = state.steps.get(id)?.netUg ?? 0
    const fromUg = targetOf(state, id) ?? 0
    const isOpen = !isDone(state, id)
    const toUg = isOpen ? Math.max(roundToStep(fromUg * ratio, planned.balance.stepUg), netUg) : netUg
    return { step: id, line: qs, fromUg, netUg, toUg, isOpen }
  })
  const otherwiseInUg = inBatchUg(state, qs) - portions.reduce((sum, { netUg }) => sum + netUg, 0)
  const restUg = qsUg - otherwiseInUg - portions.reduce((sum, { toUg }) => sum + toUg, 0)
  if (restUg > 0 && !canMakeUp(state)) giveLast(portions, restUg - state.heldBackUg)
  else if (restUg < 0) take(portions, -restUg)
  const heldBackUg = restUg < 0 ? 0 : canMakeUp(state) ? restUg : Math.min(restUg, state.heldBackUg)
  const changed = portions.filter(({ isOpen, netUg, fromUg, toUg }) => (isOpen || toUg !== netUg) && toUg !== fromUg)
  return { heldBackUg, targets: changed.map(({ step, line, fromUg, toUg }) => ({ step, line, fromUg, toUg })) }
}

interface Portion {
  readonly netUg: Micrograms
  toUg: Micrograms
}

function take(portions: readonly Portion[], shortUg: Micrograms): void {
  let leftUg = shortUg
  for (const portion of portions) {
    const lessUg = Math.min(leftUg, portion.toUg - portion.netUg)
    portion.toUg -= lessUg
    leftUg -= lessUg
  }
}

function giveLast(portions: readonly Portion[], moreUg: Micrograms): void {
  const last = portions.at(-1)
  if (last && moreUg > 0) last.toUg += moreUg
}
