import type { Lot } from '../batch/catalogue'
import type { BatchSummary } from '../batch/summary'
import type { EventLog } from '../ports/event-log'
import type { Micrograms } from '../trade/mass'

/** Received and adjusted, less what every batch took. */
export async function onHandOf(lots: readonly Lot[], log: EventLog): Promise<ReadonlyMap<string, Micrograms>> {
  const used = new Map<string, Micrograms>()
  for (const { usedByLot } of await allBatches(log)) {
    for (const { lot, massUg } of usedByLot) used.set(lot, (used.get(lot) ?? 0) + massUg)
  }
  return new Map(
    lots.map((lot) => {
      const adjustedUg = (lot.adjustments ?? []).reduce((sum, each) => sum + each.massUg, 0)
      return [lot.id, lot.receivedUg + adjustedUg - (used.get(lot.id) ?? 0)]
    }),
  )
}

/** Numbers of a formula's revisions that a batch was made by. */
export async function usedRevisionsOf(formulaId: string, log: EventLog): Promise<ReadonlySet<number>> {
  const batches = await allBatches(log)
  return new Set(batches.filter((each) => each.formulaId === formulaId).map((each) => each.revision))
}

async function allBatches(log: EventLog): Promise<readonly BatchSummary[]> {
  const heads = await log.heads({ family: 'batch' })
  // Rows of this family are written by projectBatch alone; a damaged one has no summary.
  return heads.flatMap((head) => (head.summary === null ? [] : [head.summary as BatchSummary]))
}
