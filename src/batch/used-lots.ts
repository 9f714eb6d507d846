import type { Micrograms } from '../trade/mass'
import type { BatchState } from './state'

/** What a batch took of the lots in store. A pre-mix took its parts whole, whatever of it went in. */
export function usedLots(state: BatchState): readonly { readonly lot: string; readonly massUg: Micrograms }[] {
  const parts = new Map(
    state.header.lots.flatMap(({ lots }) => lots.flatMap(({ id, madeFrom }) => (madeFrom ? [[id, madeFrom]] : []))),
  )
  const used = new Map<string, Micrograms>()
  for (const [lot, massUg] of state.usedByLot)
    for (const each of parts.get(lot) ?? [{ lot, massUg }]) used.set(each.lot, (used.get(each.lot) ?? 0) + each.massUg)
  return [...used].map(([lot, massUg]) => ({ lot, massUg }))
}
