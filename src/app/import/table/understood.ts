import type { Micrograms } from '../../../trade/mass'
import type { LineAmount } from './line-amounts'
import type { PhasesFound } from './phases'
import type { RowKind } from './settled'
import type { RowProblem, TableProblem } from './table-problem'

/** A sheet as it was understood: every filled row, what makes the formula, and what does not fit. */
export interface ReadTable {
  readonly rows: readonly ReadRow[]
  readonly phases: PhasesFound
  readonly title: string
  readonly notes: readonly string[]
  readonly problems: readonly TableProblem[]
  /** What the masses of the sheet make, where it has any and says so. */
  readonly totalUg: Micrograms | null
}

export interface ReadRow {
  readonly row: number
  readonly kind: RowKind
  /** Counts the phases, −1 before the first. */
  readonly phase: number
  readonly cells: readonly string[]
  /** Of a line only. */
  readonly line: ReadLine | null
  readonly problems: readonly RowProblem[]
}

export interface ReadLine {
  readonly name: string
  readonly inci: string
  readonly function: string
  readonly supplier: string
  readonly note: string
  /** Null where it was not understood. */
  readonly amount: LineAmount | null
}
