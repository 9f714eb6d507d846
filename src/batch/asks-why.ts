import type { Disposition } from './kinds'
import { isDone } from './progress'
import { lossCheckOf } from './reconciliation'
import { isOutside, latestRested, resultRecord } from './record-results'
import type { BatchState } from './state'

/** What is still open at the end needs a word of why; later, accepting in spite of a result, and taking a word back. */
export function asksWhy(state: BatchState, decision: Disposition): boolean {
  if (state.decision === undefined) {
    const unfinished = state.plan.steps.some((planned) => !isDone(state, planned.id))
    const unsettled = [...state.deviations.values()].some((deviation) => !deviation.settled)
    return unfinished || unsettled || lossCheckOf(state).isFlagged
  }
  if (state.decision.decision === 'accept' || state.decision.decision === 'reject') return true
  if (decision !== 'accept') return false
  const results = resultRecord(state, (id) => id)
  const isWaiting = results.missing.some(({ when }) => when === 'after-rest')
  return isWaiting || latestRested(results).some(isOutside)
}
