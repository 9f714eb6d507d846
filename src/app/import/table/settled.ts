/** What a row of the sheet is taken for. */
export type RowKind = 'title' | 'heading' | 'phase' | 'line' | 'total' | 'note' | 'left-out'

/** What the person has changed of how a sheet was understood. Nothing of the sheet itself is changed. */
export interface Settled {
  /** Texts typed over cells, by `row:column`. */
  readonly cells: Readonly<Record<string, string>>
  /** Rows taken for something else than was guessed. */
  readonly kinds: Readonly<Record<number, RowKind>>
  /** The row that makes up to 100 %, where the sheet names none. */
  readonly fill: number | null
  /** What a sheet in grams makes, as typed, where the sheet does not say. */
  readonly total: string
}

export const nothingSettled: Settled = { cells: {}, kinds: {}, fill: null, total: '' }

export const cellKey = (row: number, column: number): string => `${row}:${column}`
