import { useState } from 'preact/hooks'
import { useFormat } from '../../app/format'
import { strataOf, vesselNow, vesselTargetUg } from '../../batch/progress'
import type { BatchState } from '../../batch/state'
import { Shelf, type ShelfVessel } from '../../parts/shelf'
import { massIn } from '../../trade/ledger'
import { useRun } from './run-context'

/** A phone has room for one cup; a tablet for the one in hand and two more. */
const mostOnShelf = 3

/** The vessel that the step in hand fills, drawn large, and the others that hold or will hold something. */
export function VesselShelf({ heightPx }: { heightPx?: number }) {
  const run = useRun()
  const format = useFormat()
  const { state } = run.handle.view.value
  const planned = run.planned.value
  const filled = planned === null ? undefined : vesselNow(state, planned.step.vessel)
  const [looked, setLooked] = useState<{ step: string | undefined; vessel: string } | null>(null)
  // Looking at another vessel lasts until the next step is taken in hand.
  const inHand = looked !== null && looked.step === planned?.id ? looked.vessel : filled
  const liveUg = run.judged.value?.netUg ?? 0
  const vessels = shelfIds(state, inHand, filled).map((id): ShelfVessel => {
    const heldUg = massIn(state.ledger, id)
    const live = id === filled ? liveUg : 0
    const targetUg = vesselTargetUg(state, id)
    const kept = state.plan.vessels.get(id)
    return {
      id,
      name: kept?.name ?? id,
      strata: strataOf(state, id),
      targetUg,
      ...(live > 0 ? { liveUg: live } : {}),
      ...(kept?.capacityUg === undefined ? {} : { capacityUg: kept.capacityUg }),
      massText: massText(heldUg + live, id === inHand ? targetUg : 0, format.mass),
    }
  })
  return (
    <Shelf
      vessels={vessels}
      inHand={inHand}
      onSwitch={(vessel) => setLooked({ step: planned?.id, vessel })}
      heightPx={heightPx}
    />
  )
}

function massText(heldUg: number, targetUg: number, mass: (massUg: number) => string): string {
  if (heldUg === 0) return targetUg > 0 ? `0 of ${mass(targetUg)} g` : 'empty'
  return targetUg > heldUg ? `${mass(heldUg)} of ${mass(targetUg)} g` : `${mass(heldUg)} g`
}

/** Vessels first, then cups; what has been emptied into another is off the shelf. */
function shelfIds(state: BatchState, inHand: string | undefined, filled: string | undefined): readonly string[] {
  const standing = [...state.plan.vessels.values()].filter(
    ({ id, kind }) =>
      id === inHand ||
      id === filled ||
      (state.vessels.get(id)?.emptiedInto === undefined && (kind === 'vessel' || massIn(state.ledger, id) > 0)),
  )
  const others = standing
    .filter(({ id }) => id !== inHand)
    .sort(
      (a, b) =>
        Number(b.id === filled) - Number(a.id === filled) || (a.kind === b.kind ? 0 : a.kind === 'vessel' ? -1 : 1),
    )
  return [inHand, ...others.map(({ id }) => id)].filter((id): id is string => id !== undefined).slice(0, mostOnShelf)
}
