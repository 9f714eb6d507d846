import type { Micrograms } from '../trade/mass'
import { type LargestBatch, largestBatch } from '../trade/scale-up'
import type { Material } from './catalogue'
import type { Revision } from './formula'
import { fractionsOf } from './schemas/check-revision'

/** One revision at another size, against what there is of its materials. */
export interface ScaledBatch {
  readonly sizeUg: Micrograms
  readonly rows: readonly ScaledRow[]
  /** The material that runs out first, and the batch that it allows; null where no stock of any is known. */
  readonly largest: LargestBatch | null
}

export interface ScaledRow {
  readonly line: string
  readonly phase: string
  readonly materialId: string
  readonly name: string
  readonly share: number
  readonly massUg: Micrograms
  /** Of the material in all, in lots that may be used today; null where no lot of it is known. */
  readonly stockUg: Micrograms | null
  /** What the lines of the material want beyond its stock. */
  readonly shortUg: Micrograms
}

/** Lines at this size, adjusters as expected; `stock` by material. */
export function scaledBatch(
  revision: Revision,
  materials: ReadonlyMap<string, Material>,
  stock: ReadonlyMap<string, Micrograms>,
  sizeUg: Micrograms,
): ScaledBatch {
  const shares = sharesByMaterial(revision)
  const rows = linesOf(revision).map(({ line, materialId, phase, share }): ScaledRow => {
    const stockUg = stock.get(materialId) ?? null
    const wantedUg = Math.round((shares.get(materialId) ?? 0) * sizeUg)
    const shortUg = stockUg === null ? 0 : Math.max(0, wantedUg - stockUg)
    const name = materials.get(materialId)?.name ?? materialId
    return { line, phase, materialId, name, share, massUg: Math.round(share * sizeUg), stockUg, shortUg }
  })
  return { sizeUg, rows, largest: largestByStock(revision, stock) }
}

/** The largest batch of a revision that the stock makes. */
export const largestByStock = (revision: Revision, stock: ReadonlyMap<string, Micrograms>): LargestBatch | null =>
  largestBatch([...sharesByMaterial(revision)].map(([id, share]) => ({ id, share, stockUg: stock.get(id) ?? null })))

function sharesByMaterial(revision: Revision): ReadonlyMap<string, number> {
  const shares = new Map<string, number>()
  for (const { materialId, share } of linesOf(revision))
    shares.set(materialId, Number(((shares.get(materialId) ?? 0) + share).toFixed(12)))
  return shares
}

function linesOf({ phases }: Revision) {
  const { qs } = fractionsOf(phases.flatMap(({ lines }) => lines))
  return phases.flatMap(({ letter, lines }) =>
    lines.map(({ id, materialId, amount }) => ({
      line: id,
      phase: letter,
      materialId,
      share: amount.kind === 'fraction' ? amount.fraction : amount.kind === 'as-needed' ? amount.expected : (qs ?? 0),
    })),
  )
}
