import { massIn } from '../trade/ledger'
import type { RemedyRefusal } from '../trade/remedy'
import type { Bodies } from './kinds'
import { isDone, targetOf, vesselNow } from './progress'
import { lastVessel } from './remedy-problem'
import type { BatchState } from './state'

/**
 * The first vessel beside the last one that new targets would overfill; a cup may be filled again once it is emptied.
 * Only what is still to be weighed counts, and what a vessel with a stated capacity holds now.
 */
export function fullSideVessel(
  state: BatchState,
  targets: Bodies['remedy-chosen']['targets'],
): Extract<RemedyRefusal, { code: 'SIDE_VESSEL_TOO_SMALL' }> | null {
  const last = lastVessel(state)?.id
  const changed = new Map(targets.map(({ step, toUg }) => [step, toUg]))
  for (const { id, kind, capacityUg } of state.plan.vessels.values()) {
    if (kind !== 'vessel' || id === last || capacityUg === undefined || state.vessels.get(id)?.emptiedInto) continue
    const open = state.plan.steps.filter(({ step }) => step.kind === 'weigh' && vesselNow(state, step.vessel) === id)
    const toComeUg = open.map((planned) => {
      const toUg = changed.get(planned.id)
      if (toUg === undefined && isDone(state, planned.id)) return 0
      return Math.max(0, (toUg ?? targetOf(state, planned.id) ?? 0) - (state.steps.get(planned.id)?.countedUg ?? 0))
    })
    const neededUg = toComeUg.reduce((sum, massUg) => sum + massUg, massIn(state.ledger, id))
    if (neededUg > capacityUg) return { code: 'SIDE_VESSEL_TOO_SMALL', id, neededUg, capacityUg }
  }
  return null
}
