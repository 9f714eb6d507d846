import type { Lot } from '../batch/catalogue'
import type { BatchSummary } from '../batch/summary'
import type { Micrograms } from '../trade/mass'

/** Received and adjusted, less what every batch took. */
export function onHandOf(lots: readonly Lot[], batches: readonly BatchSummary[]): ReadonlyMap<string, Micrograms> {
  const used = new Map<string, Micrograms>()
  for (const { usedByLot } of batches) {
    for (const { lot, massUg } of usedByLot) used.set(lot, (used.get(lot) ?? 0) + massUg)
  }
  return new Map(
    lots.map((lot) => {
      const adjustedUg = (lot.adjustments ?? []).reduce((sum, each) => sum + each.massUg, 0)
      return [lot.id, lot.receivedUg + adjustedUg - (used.get(lot.id) ?? 0)]
    }),
  )
}
