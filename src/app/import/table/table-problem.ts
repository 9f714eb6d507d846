import type { AmountRefusal } from './amount-text'

/** What was not understood of a row. Rows and columns count from 0; `column` is null where it is of the whole row. */
export type RowProblem = { readonly row: number; readonly column: number | null } & (
  | AmountRefusal
  | { readonly code: 'AMOUNT_UNIT'; readonly unit: string; readonly text: string }
  | { readonly code: 'AMOUNT_OVER' | 'AMOUNT_ZERO'; readonly text: string }
  | { readonly code: 'LINE_NO_NAME' | 'LINE_NAME_LONG' }
  | { readonly code: 'LINE_QS_TWICE'; readonly first: number }
  /** Fractions of the batch, or grams, as the sheet gives them. */
  | { readonly code: 'TOTAL_DIFFERS'; readonly stated: number; readonly sum: number; readonly unit: '%' | 'g' }
)

/** What keeps the whole table from being a formula. `total` and `others` are fractions. */
export type TableProblem =
  | { readonly code: 'TABLE_NO_NAMES' | 'TABLE_NO_AMOUNTS' | 'TABLE_NO_LINES' | 'TABLE_TOTAL_UNKNOWN' }
  | { readonly code: 'TABLE_NOT_WHOLE'; readonly total: number }
  | { readonly code: 'TABLE_QS_NEGATIVE'; readonly row: number; readonly others: number }
  | { readonly code: 'TABLE_TOO_MANY_LINES'; readonly lines: number; readonly most: number }
  | { readonly code: 'TABLE_TOO_MANY_PHASES'; readonly phases: number; readonly most: number }
