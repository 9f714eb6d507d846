import { chanceOf, spearman } from '../trade/rank-correlation'
import type { BatchFigure } from './batch-figures'

/** One batch beside others, with what it was made like. */
export interface ComparedBatch {
  readonly id: string
  readonly code: string
  readonly revision: number
  readonly openedAtMs: number
  readonly figures: readonly BatchFigure[]
}

/** What batches differ in, batch by batch in their order; null where one has no such figure. */
export interface ComparedRow {
  readonly id: string
  readonly kind: BatchFigure['kind']
  readonly label: string
  readonly unit: string
  readonly cells: readonly (ComparedCell | null)[]
  /** From the least to the most, in units of its tolerance. */
  readonly spread: number
  readonly limits?: BatchFigure['limits']
}

export interface ComparedCell {
  readonly value: number
  readonly target?: number
  /** From what was asked for, in units of its tolerance. */
  readonly off?: number
}

/** Everything that at least two of the batches have, what they differ in most first. */
export function compareBatches(batches: readonly ComparedBatch[]): readonly ComparedRow[] {
  const first = new Map<string, BatchFigure>()
  for (const { figures } of batches) for (const figure of figures) first.set(figure.id, figure)
  const rows = [...first.values()].flatMap((figure): ComparedRow[] => {
    const own = batches.map(({ figures }) => figures.find(({ id }) => id === figure.id))
    const known = own.flatMap((each) => each ?? [])
    if (known.length < 2) return []
    const values = known.map(({ value }) => value)
    const one = Math.min(...known.map((each) => each.one))
    return [
      {
        id: figure.id,
        kind: figure.kind,
        label: figure.label,
        unit: figure.unit,
        cells: own.map((each) => (each === undefined ? null : cellOf(each))),
        spread: (Math.max(...values) - Math.min(...values)) / one,
        ...(figure.limits === undefined ? {} : { limits: figure.limits }),
      },
    ]
  })
  return rows.sort((a, b) => b.spread - a.spread || (a.id < b.id ? -1 : 1))
}

function cellOf({ value, target, one }: BatchFigure): ComparedCell {
  return { value, ...(target === undefined ? {} : { target, off: (value - target) / one }) }
}

/** What a difference goes with, the closest first. */
export interface GoesWith {
  readonly row: ComparedRow
  readonly rho: number
  readonly n: number
  /** Not rarer than chance alone, one in twenty. */
  readonly isChance: boolean
}

/** Rank correlations of everything else with one row. What never changes, or is told of too few, is left out. */
export function goesWith(rows: readonly ComparedRow[], about: string): readonly GoesWith[] {
  const wanted = rows.find(({ id }) => id === about)
  if (wanted === undefined) return []
  return rows
    .filter(({ id }) => id !== about)
    .flatMap((row): GoesWith[] => {
      const told = spearman(valuesOf(row), valuesOf(wanted))
      if (told === null) return []
      const chance = chanceOf(told.n)
      return [{ row, ...told, isChance: chance === null || Math.abs(told.rho) < chance - 1e-9 }]
    })
    .sort((a, b) => Math.abs(b.rho) - Math.abs(a.rho) || (a.row.id < b.row.id ? -1 : 1))
}

export const valuesOf = ({ cells }: ComparedRow): readonly (number | null)[] => cells.map((cell) => cell?.value ?? null)
