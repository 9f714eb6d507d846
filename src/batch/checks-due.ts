import { msOf } from './instant'
import { isDone } from './progress'
import type { BatchState, StepState } from './state'

export interface CheckDue {
  readonly check: string
  readonly label: string
  readonly dueAtMs: number
}

/** Checks that wait until the structure has settled: due when the rest is over, counted from the last addition. */
export function checksDueOf(state: BatchState): readonly CheckDue[] {
  if (state.stage === 'abandoned' || state.decision?.decision === 'reject') return []
  const madeAtMs = state.parts.length > 0 ? reworkedAtMs(state) : lastProcessAtMs(state)
  if (madeAtMs === undefined) return []
  const dueAtMs = madeAtMs + (state.header.revision.restHours ?? 24) * 3_600_000
  return state.header.revision.specification
    .filter((check) => check.when === 'after-rest')
    .map((check) => ({ check: check.id, label: check.label, dueAtMs }))
}

/** A reading of a kept jar says nothing of the batch itself. */
export const hasBeenMeasured = (state: BatchState, check: string): boolean =>
  state.measurements
    .slice(state.parts.at(-1)?.readBefore ?? 0)
    .some(({ body }) => body.check === check && (body.conditions === undefined || body.step !== undefined))

/** When the last rework was over: its last step, or where one is left, the decision; until then nothing is due. */
function reworkedAtMs(state: BatchState): number | undefined {
  const ids = state.parts.at(-1)?.steps ?? []
  if (!ids.every((id) => isDone(state, id))) return state.decision?.atMs
  return Math.max(0, ...ids.map((id) => doneAtMs(state.steps.get(id))))
}

/** A weighing is done with its last reading. */
function doneAtMs(step: StepState | undefined): number {
  const last = step?.weighings.at(-1)
  return step?.finished?.atMs ?? (last ? msOf(last.occurredAt ?? last.at) : 0)
}

/** When the making was over: the last of filling, sampling, making up; undefined before any of them. */
function lastProcessAtMs(state: BatchState): number | undefined {
  let atMs: number | undefined
  for (const { id, step } of state.plan.steps) {
    const finished = state.steps.get(id)?.finished
    const counts = step.kind === 'make-up' || step.kind === 'fill' || step.kind === 'sample'
    if (counts && finished) atMs = Math.max(atMs ?? 0, finished.atMs)
  }
  return atMs ?? state.decision?.atMs
}
