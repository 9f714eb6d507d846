import type { Micrograms } from '../trade/mass'
import type { BatchState } from './state'

/** What a batch took of the lots in store; one may stand twice. A pre-mix took its parts whole, whatever of it went in. */
export function usedLots({
  header,
  usedByLot,
}: BatchState): readonly { readonly lot: string; readonly massUg: Micrograms }[] {
  const planned = header.lots.flatMap(({ lots }) => lots)
  return [...usedByLot].flatMap(([lot, massUg]) => planned.find(({ id }) => id === lot)?.madeFrom ?? [{ lot, massUg }])
}
