import type { Lot } from '../../batch/catalogue'
import type { PlannedLine } from '../../batch/plan'
import { daysOver } from '../../batch/preflight-lots'
import type { Micrograms } from '../../trade/mass'

/** A lot as the shelf shows it today. */
export interface ShelfLot {
  readonly lot: Lot
  readonly leftUg: Micrograms
  /** Whole days since its last day; nought or less while it may be used. */
  readonly daysOver: number
  readonly state: 'usable' | 'expired' | 'quarantine' | 'used-up'
}

/** The lots of a material, the one that expires first in front; used-up ones last. */
export function shelfOf(
  materialId: string,
  lots: Iterable<Lot>,
  onHand: ReadonlyMap<string, Micrograms> | null,
  todayIso: string,
): readonly ShelfLot[] {
  const shelf: ShelfLot[] = []
  for (const lot of lots)
    if (lot.materialId === materialId) shelf.push(onShelf(lot, onHand?.get(lot.id) ?? lot.receivedUg, todayIso))
  return shelf.sort(
    (a, b) => Number(a.state === 'used-up') - Number(b.state === 'used-up') || keyOf(a.lot).localeCompare(keyOf(b.lot)),
  )
}

/**
 * What a hand would take: the released lot that expires first and has some left. An expired one is not passed over in
 * silence: it stands on the shelf, is called out, and settled. Quarantine only where there is nothing else; where all
 * are empty the first of them, so that this is called out too.
 */
export function proposedLots(shelf: readonly ShelfLot[]): readonly string[] {
  const first = shelf.find(isReleased) ?? shelf.find(({ state }) => state === 'quarantine') ?? shelf[0]
  return first ? [first.lot.id] : []
}

/** The next lots that may be used, oldest first, until they hold what is needed; all of them where they do not. */
export function usableLots(shelf: readonly ShelfLot[], neededUg: Micrograms, before: readonly string[] = []): string[] {
  const chosen = [...before]
  let heldUg = shelf.reduce((sum, { lot, leftUg }) => (before.includes(lot.id) ? sum + leftUg : sum), 0)
  for (const { lot, leftUg, state } of shelf) {
    if (heldUg >= neededUg && chosen.length > 0) break
    if (state !== 'usable' || chosen.includes(lot.id)) continue
    chosen.push(lot.id)
    heldUg += leftUg
  }
  return chosen
}

/** Every lot that the lines draw on, once, with what it has now and what the batch leaves of it. */
export function stockAfter(
  lines: readonly PlannedLine[],
  shelves: ReadonlyMap<string, readonly ShelfLot[]>,
): readonly StockLine[] {
  const stock = new Map<string, StockLine>()
  for (const { line, material, lots, targetUg } of lines) {
    let wantedUg = targetUg
    for (const lot of lots) {
      const leftUg = shelves.get(line.id)?.find((each) => each.lot.id === lot.id)?.leftUg ?? 0
      const known = stock.get(lot.id) ?? { material: material.name, lot, leftUg, afterUg: leftUg }
      const takenUg = Math.min(Math.max(known.afterUg, 0), wantedUg)
      wantedUg -= takenUg
      stock.set(lot.id, { ...known, afterUg: known.afterUg - takenUg })
    }
  }
  return [...stock.values()]
}

export interface StockLine {
  readonly material: string
  readonly lot: Lot
  readonly leftUg: Micrograms
  readonly afterUg: Micrograms
}

const isReleased = ({ state }: ShelfLot): boolean => state === 'usable' || state === 'expired'

function onShelf(lot: Lot, leftUg: Micrograms, todayIso: string): ShelfLot {
  const days = daysOver(lot, todayIso)
  return { lot, leftUg, daysOver: days, state: stateOf(lot, leftUg, days) }
}

function stateOf(lot: Lot, leftUg: Micrograms, days: number): ShelfLot['state'] {
  if (lot.status === 'used-up' || leftUg <= 0) return 'used-up'
  if (lot.status === 'quarantine') return 'quarantine'
  return days > 0 ? 'expired' : 'usable'
}

/** Without a last day it can wait. */
const keyOf = (lot: Lot): string => `${lot.expires ?? '9999'}|${lot.receivedOn ?? ''}|${lot.code}`
