import type { Micrograms } from './mass'

/** One material of a formula: its share of the batch, 0–1, and what there is of it; null where nobody counts it. */
export interface StockedShare {
  readonly id: string
  readonly share: number
  readonly stockUg: Micrograms | null
}

export interface LargestBatch {
  /** The material that runs out first. */
  readonly limiting: string
  readonly sizeUg: Micrograms
}

/** The largest batch that the stock makes: the material with the least stock for its share decides. Null where no stock is known. */
export function largestBatch(shares: readonly StockedShare[]): LargestBatch | null {
  return shares.reduce<LargestBatch | null>((least, { id, share, stockUg }) => {
    if (stockUg === null || share <= 0) return least
    const sizeUg = Math.floor(Math.max(0, stockUg) / share)
    return least === null || sizeUg < least.sizeUg ? { limiting: id, sizeUg } : least
  }, null)
}

/** How a batch is filled: what one unit takes, and the fraction of the batch that is lost on the way, 0 to below 1. */
export interface Filling {
  readonly unitUg: Micrograms
  readonly lossFraction: number
}

/** Whole units that a batch fills after its loss. */
export function unitsOf(sizeUg: Micrograms, filling: Filling): number {
  let units = Math.floor((sizeUg * (1 - filling.lossFraction)) / filling.unitUg) + 1
  while (units > 0 && sizeForUnits(units, filling) > sizeUg) units -= 1
  return units
}

/** The smallest batch that fills so many units after its loss. */
export const sizeForUnits = (units: number, { unitUg, lossFraction }: Filling): Micrograms =>
  Math.ceil((units * unitUg) / (1 - lossFraction))
