import type { Micrograms } from '../trade/mass'
import type { Lot } from './catalogue'
import { daysOver } from './preflight-lots'

/**
 * What there is of each material in lots that may be used today: released, in date, not used up. A lot of another
 * active matter than the formula assumes counts as what it replaces. Materials without any lot are not counted at all.
 */
export function usableStock(
  lots: Iterable<Lot>,
  onHand: ReadonlyMap<string, Micrograms>,
  todayIso: string,
  assayAssumed: ReadonlyMap<string, number>,
): ReadonlyMap<string, Micrograms> {
  const stock = new Map<string, Micrograms>()
  for (const lot of lots) {
    const isUsable = lot.status === 'released' && daysOver(lot, todayIso) <= 0
    const leftUg = isUsable ? Math.max(0, onHand.get(lot.id) ?? lot.receivedUg) : 0
    const assumed = assayAssumed.get(lot.materialId)
    const worth = assumed === undefined || lot.assay === undefined ? 1 : lot.assay / assumed
    stock.set(lot.materialId, (stock.get(lot.materialId) ?? 0) + Math.floor(leftUg * worth))
  }
  return stock
}
