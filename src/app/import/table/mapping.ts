/** What a column holds. `note` and `ignore` may stand several times, each of the others once. */
export type ColumnRole =
  | 'phase'
  | 'phase-name'
  | 'name'
  | 'inci'
  | 'percent'
  | 'grams'
  | 'function'
  | 'supplier'
  | 'note'
  | 'ignore'

/** How a sheet is read. Rows and columns count from 0. */
export interface Mapping {
  /** The row that names the columns, −1 where none does. */
  readonly heading: number
  readonly roles: readonly ColumnRole[]
  readonly mark: '.' | ','
  /** Whether the shares are percentages (72.5) or parts of one (0.725). */
  readonly scale: 'percent' | 'fraction'
  /** A table that this app wrote: its rows are taken as they stand, nothing is guessed. */
  readonly isOwn: boolean
}

/** A role given to one column is taken from the column that had it. */
export function withRole(mapping: Mapping, column: number, role: ColumnRole): Mapping {
  const single = role !== 'note' && role !== 'ignore'
  const roles = mapping.roles.map((each, at) => (at === column ? role : single && each === role ? 'ignore' : each))
  return { ...mapping, roles }
}
