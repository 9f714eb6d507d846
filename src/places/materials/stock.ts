import type { Lot, Material } from '../../batch/catalogue'
import type { Formula } from '../../batch/formula'
import type { Micrograms } from '../../trade/mass'

export type LotMark = 'good' | 'retest' | 'expired' | 'quarantine' | 'used-up' | 'empty'

export interface LotRow {
  readonly lot: Lot
  readonly onHandUg: Micrograms | null
  readonly mark: LotMark
}

export interface MaterialRow {
  readonly material: Material
  /** Of the lots that may be used. */
  readonly onHandUg: Micrograms
  readonly lots: number
  readonly expired: number
  /** Lots that are to be tested again, or not released yet. */
  readonly waiting: number
  /** What may be used has come down to where more is to be ordered. */
  readonly reorder: boolean
}

/** What a formula's current revision takes of a material; `share` is null for its q.s. line. */
export interface Use {
  readonly formula: Formula
  readonly revision: number
  readonly share: number | null
}

/** `today` is a local ISO date; both days count as days of use. */
export function markOf(lot: Lot, onHandUg: Micrograms | null, today: string): LotMark {
  if (lot.status !== 'released') return lot.status
  if (lot.expires !== undefined && lot.expires < today) return 'expired'
  if (onHandUg !== null && onHandUg <= 0) return 'empty'
  return lot.retestOn !== undefined && lot.retestOn < today ? 'retest' : 'good'
}

/** What may be used first, the lot that runs out first in front; then what waits or has run out, and at last what is gone. */
export const inOrderOfUse = (rows: readonly LotRow[]): readonly LotRow[] =>
  rows.toSorted((a, b) => rank[a.mark] - rank[b.mark] || keyOf(a).localeCompare(keyOf(b)))

const rank: Readonly<Record<LotMark, number>> = {
  good: 0,
  retest: 1,
  expired: 1,
  quarantine: 1,
  empty: 2,
  'used-up': 2,
}

export function materialRow(material: Material, lots: readonly LotRow[]): MaterialRow {
  const usable = lots.filter(({ mark }) => mark === 'good')
  const onHandUg = usable.reduce((sum, row) => sum + (row.onHandUg ?? 0), 0)
  const isKnown = usable.every((row) => row.onHandUg !== null)
  return {
    material,
    onHandUg,
    lots: usable.length,
    expired: lots.filter(({ mark }) => mark === 'expired').length,
    waiting: lots.filter(({ mark }) => mark === 'retest' || mark === 'quarantine').length,
    reorder: isKnown && material.reorderAtUg !== undefined && onHandUg <= material.reorderAtUg,
  }
}

/** Formulas whose current revision has the material, those put away left out. */
export function usesOf(materialId: string, formulas: Iterable<Formula>): readonly Use[] {
  return [...formulas].flatMap((formula): Use[] => {
    const revision = formula.revisions.at(-1)
    if (formula.archived || revision === undefined) return []
    const lines = revision.phases
      .flatMap((phase) => phase.lines)
      .filter((line) => line.materialId === materialId)
      .map(({ amount }) => amount)
    if (lines.length === 0) return []
    const shares = lines.map((amount) =>
      amount.kind === 'fraction' ? amount.fraction : amount.kind === 'as-needed' ? amount.expected : null,
    )
    const share = shares.includes(null) ? null : shares.reduce<number>((sum, each) => sum + (each ?? 0), 0)
    return [{ formula, revision: revision.number, share: share === null ? null : Number(share.toFixed(12)) }]
  })
}

/** The earlier of the two days; without one a lot can wait. */
function keyOf({ lot }: LotRow): string {
  const [day = '9999'] = [lot.expires, lot.retestOn].filter((each) => each !== undefined).toSorted()
  return `${day}|${lot.receivedOn ?? ''}|${lot.code}`
}
