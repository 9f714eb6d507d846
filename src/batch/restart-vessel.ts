import { acceptedChangeUg } from './losses'
import { vesselsOfStep } from './plan-batch'
import type { BatchState, DeviationState, StepState } from './state'

/**
 * After a vessel's contents went to waste: everything that was done in it, and in the cups tipped into it, is to do
 * again. What was weighed stays in the log, in the ledger's sink and in the lots' use.
 */
export function restartVessel(state: BatchState, vesselId: string, by: string, reason: string, atMs: number): void {
  for (const planned of state.plan.steps) {
    if (!vesselsOfStep(planned.step).includes(vesselId)) continue
    const step = state.steps.get(planned.id)
    if (step && weighedElsewhere(step, vesselId)) continue
    if (!step) continue
    resetStep(step)
    const discarded = { how: 'discard' as const, reason, atMs, by }
    settleOpen(state, step.id, discarded)
    settleForgotten(state, step.id, discarded)
    takeBackAccepted(state, step.id, discarded)
  }
  for (const vessel of state.vessels.values()) {
    if (vessel.emptiedInto !== vesselId) continue
    delete vessel.emptiedInto
    delete vessel.emptiedAtMs
    restartVessel(state, vessel.id, by, reason, atMs)
  }
  const own = state.vessels.get(vesselId)
  if (own) {
    delete own.firstFilledAtMs
    own.readings.length = 0
  }
}

/** Settles what was open about a step. */
export function settleOpen(state: BatchState, step: string, settled: NonNullable<DeviationState['settled']>): void {
  for (const deviation of state.deviations.values()) {
    if (deviation.step === step && !deviation.settled) deviation.settled = settled
  }
}

/** A line whose step had passed can go in again once that step is to do again. */
function settleForgotten(state: BatchState, lock: string, settled: NonNullable<DeviationState['settled']>): void {
  for (const deviation of state.deviations.values()) {
    if (deviation.cause !== 'forgotten' || deviation.settled) continue
    if (state.plan.lines.get(deviation.line)?.line.locksAfter === lock) deviation.settled = settled
  }
}

/** What was accepted of a step that is to be done again went to waste with it: the batch comes to its total again. */
function takeBackAccepted(state: BatchState, step: string, settled: NonNullable<DeviationState['settled']>): void {
  for (const deviation of state.deviations.values()) {
    if (deviation.step !== step || deviation.settled?.how !== 'accept') continue
    deviation.settled = settled
    if (acceptedChangeUg(deviation) === 0) continue
    state.totalWas.push(state.totalUg)
    state.totalUg -= acceptedChangeUg(deviation)
  }
}

/** A line that was completed in another vessel is not undone with this one. */
const weighedElsewhere = (step: StepState, vesselId: string): boolean =>
  step.weighings.length > 0 && step.weighings.every((weighing) => weighing.body.vessel !== vesselId)

function resetStep(step: StepState): void {
  step.countedUg = 0
  step.netUg = 0
  step.weighings.length = 0
  step.portions.length = 0
  step.gatesPassed.clear()
  delete step.startedAtMs
  delete step.finished
  delete step.timer
}
