/** A table as it was pasted or read from a file: texts only, nothing worked out. Rows keep their place in the file. */
export interface Sheet {
  readonly name: string
  readonly rows: readonly (readonly string[])[]
}

/** Why a file or a paste gives no table. `most` is the limit that was passed. */
export type SheetRefusal =
  | { readonly code: 'SHEET_TOO_LARGE'; readonly bytes: number; readonly most: number }
  | { readonly code: 'SHEET_UNPACKS_TOO_LARGE'; readonly bytes: number; readonly most: number }
  | { readonly code: 'SHEET_TOO_MANY_ROWS'; readonly name: string; readonly rows: number; readonly most: number }
  | { readonly code: 'SHEET_EMPTY' | 'SHEET_FOREIGN' | 'SHEET_LOCKED' | 'SHEET_OLD' | 'SHEET_DAMAGED' }

/** A formula of 200 lines with its notes is far below; what is above is another kind of document. */
export const sheetLimits = { fileBytes: 5_000_000, unpackedBytes: 40_000_000, rows: 2000, columns: 60, cell: 4000 }

/** The column's letters as a spreadsheet shows them: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const before = Math.floor(column / 26)
  const letter = String.fromCharCode(65 + (column % 26))
  return before === 0 ? letter : `${columnLetters(before - 1)}${letter}`
}

/** Cells without blanks around them and without what lies beyond the limits; empty rows and columns at the end go. */
export function tidyRows(rows: readonly (readonly string[])[]): string[][] {
  const tidy = rows.map((row) => row.slice(0, sheetLimits.columns).map(tidyCell))
  const last = tidy.findLastIndex((row) => row.some((cell) => cell !== ''))
  const used = tidy.slice(0, last + 1)
  const width = Math.max(0, ...used.map((row) => row.findLastIndex((cell) => cell !== '') + 1))
  return used.map((row) => Array.from({ length: width }, (_, column) => row[column] ?? ''))
}

/** No-break and narrow blanks become plain ones; blanks of no width go. */
const tidyCell = (cell: string): string =>
  cell
    .replace(/\r\n?/g, '\n')
    .replace(/[\u00a0\u2007\u202f]/g, ' ')
    .replace(/[\u200b\u2060\ufeff]/g, '')
    .slice(0, sheetLimits.cell)
    .trim()
