import { compositionAsMade } from '../trade/composition'
import { phaseOf } from './fold-rework'
import type { Revision } from './formula'
import { msOf } from './instant'
import type { MadeOtherwise } from './made-otherwise'
import type { PlannedStep } from './plan'
import type { BatchState } from './state'

/** What went in beside the formula: unplanned in the run, then what reworks added. */
export const addedBeside = (state: BatchState, revision: Revision): readonly MadeOtherwise[] => [
  ...unplannedAdditions(state, revision),
  ...additionsOfReworks(state, revision),
]

function unplannedAdditions(state: BatchState, revision: Revision): MadeOtherwise[] {
  const shares = compositionAsMade(state.ledger)
  return [...state.unplanned.values()].flatMap((event): MadeOtherwise[] => {
    const { component, materialId, name, vessel, reason } = event.body
    const share = tidy(shares.get(component) ?? 0)
    if (share === 0) return []
    const after = lastDoneBefore(state, revision, msOf(event.occurredAt ?? event.at))
    return [
      {
        id: event.id,
        kind: 'unplanned',
        title: name,
        share,
        vessel,
        reason,
        beyond: true,
        ...(materialId === undefined ? {} : { materialId }),
        ...(after === undefined ? {} : { after }),
      },
    ]
  })
}

/** What a rework added that is not in the formula: as if it had gone in after all that the revision does. */
function additionsOfReworks(state: BatchState, revision: Revision): MadeOtherwise[] {
  const shares = compositionAsMade(state.ledger)
  const after = lastDoneBefore(state, revision, Number.POSITIVE_INFINITY)
  return [...state.plan.lines.values()].flatMap(({ line, material, phase }): MadeOtherwise[] => {
    const share = tidy(shares.get(line.id) ?? 0)
    const step = state.plan.byId.get(line.id)
    if (phase !== '+' || share === 0 || step === undefined) return []
    return [
      {
        id: line.id,
        kind: 'unplanned',
        title: material.name,
        share,
        vessel: step.step.vessel,
        reason: phaseOf(step.part ?? 0).toLowerCase(),
        beyond: true,
        ...(line.materialId === line.id ? {} : { materialId: line.materialId }),
        ...(after === undefined ? {} : { after }),
      },
    ]
  })
}

/** The step of the revision that was finished last before a moment, or the last of its weighings. */
function lastDoneBefore(state: BatchState, revision: Revision, atMs: number): string | undefined {
  const own = new Set(revision.procedure.map(({ id }) => id))
  const doneAt = ({ id }: PlannedStep): number => {
    const step = state.steps.get(id)
    const weighedAt = step?.weighings.map((event) => msOf(event.occurredAt ?? event.at)) ?? []
    return Math.max(...weighedAt, step?.finished?.atMs ?? Number.NEGATIVE_INFINITY)
  }
  const done = state.plan.steps.filter((planned) => own.has(planned.id) && doneAt(planned) <= atMs)
  return done
    .filter((each) => Number.isFinite(doneAt(each)))
    .reduce<PlannedStep | undefined>(
      (last, each) => (last === undefined || doneAt(each) >= doneAt(last) ? each : last),
      undefined,
    )?.id
}

/** To 0.0001 % of the batch: finer than any balance of a bench tells. */
export const tidy = (share: number): number => Number(share.toFixed(6))
