import { inSink, massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import type { BatchRefusal } from './refusal'
import { badMass } from './sanity'
import type { BatchState } from './state'

/** Why a mass cannot go into a vessel; null where it can. */
export function tooFull(state: BatchState, vesselId: string, massUg: Micrograms): BatchRefusal | null {
  const vessel = state.plan.vessels.get(vesselId)
  if (!vessel) return { code: 'UNKNOWN_VESSEL_HERE', vessel: vesselId }
  if (vessel.capacityUg === undefined) return null
  const roomUg = vessel.capacityUg - massIn(state.ledger, vesselId)
  return massUg > roomUg ? { code: 'OVER_VESSEL', massUg, roomUg, vessel: vessel.name } : null
}

/** Why a mass cannot be taken out of a vessel; null where it can. A reason is asked for where one is handed in. */
export function cannotTake(
  state: BatchState,
  vessel: string,
  massUg: Micrograms,
  reason?: string,
): BatchRefusal | null {
  if (!state.plan.vessels.has(vessel)) return { code: 'UNKNOWN_VESSEL_HERE', vessel }
  const bad = badMass(massUg)
  if (bad) return bad
  const heldUg = massIn(state.ledger, vessel)
  if (massUg > heldUg) return { code: 'MORE_THAN_HELD', askedUg: massUg, heldUg }
  return reason !== undefined && reason.trim() === '' ? { code: 'REASON_MISSING' } : null
}

/** Why so much of what was filled cannot go back into a vessel; null where it can. */
export function cannotReturn(state: BatchState, vessel: string, massUg: Micrograms): BatchRefusal | null {
  const bad = badMass(massUg)
  if (bad) return bad
  const heldUg = inSink(state.ledger, 'filled')
  if (massUg > heldUg) return { code: 'MORE_THAN_HELD', askedUg: massUg, heldUg }
  return tooFull(state, vessel, massUg)
}
