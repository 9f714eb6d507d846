import type { Format } from '../../../app/format'
import type { BatchState } from '../../../batch/state'
import type { SelectOption } from '../../../parts/form'
import { massIn } from '../../../trade/ledger'

/** Vessels and cups that stand on the bench; `filled` leaves out what is empty. */
export function vesselOptions(
  state: BatchState,
  format: Format,
  which: 'any' | 'filled' | 'cups',
): readonly SelectOption[] {
  return [...state.plan.vessels.values()]
    .filter(({ id, kind }) => {
      const filled = massIn(state.ledger, id) > 0
      if (which === 'cups') return kind === 'cup' && filled
      return which === 'filled' ? filled : state.vessels.get(id)?.emptiedInto === undefined
    })
    .map(({ id, name, holds }) => {
      const massUg = massIn(state.ledger, id)
      const what = holds === undefined ? name : `${name}, ${holds}`
      return { value: id, label: massUg > 0 ? `${what}: ${format.massWithUnit(massUg)}` : `${what}: empty` }
    })
}
