import type { Event } from './event'
import type { Bodies } from './kinds'
import { impliedBy, isOver, targetOf } from './progress'
import type { BatchState } from './state'

/**
 * A step that is over its band waits for a way on, whether or not anybody noticed when it was weighed: two pages may
 * have weighed it, or a target may have gone down again since. What was noticed takes this one's place.
 */
export function noticeOver(state: BatchState, weighing: Event<'weighed', Bodies['weighed']>, atMs: number): void {
  const { step: stepId, line, vessel, targetUg, highUg } = weighing.body
  const planned = state.plan.byId.get(stepId)
  const countedUg = state.steps.get(stepId)?.countedUg ?? 0
  const nowUg = targetOf(state, stepId) ?? 0
  // The entry tells its band; it is worked out anew only where the target has changed since.
  const isWithin = nowUg === targetUg && countedUg <= highUg
  if (!planned || isWithin || !isOver(state, planned)) return
  state.deviations.set(impliedBy(weighing.id), {
    id: impliedBy(weighing.id),
    entry: weighing.id,
    step: stepId,
    line,
    direction: 'over',
    byUg: countedUg - nowUg,
    inCup: state.plan.vessels.get(vessel)?.kind === 'cup',
    atMs,
  })
}

/** A remedy that did not know of a weighing may have lowered its target under what is in. */
export function noticeOverAfterRemedy(state: BatchState, stepId: string, atMs: number): void {
  const weighing = state.steps.get(stepId)?.weighings.at(-1)
  const isKnown = [...state.deviations.values()].some((deviation) => deviation.step === stepId)
  if (weighing && !isKnown) noticeOver(state, weighing, atMs)
}
