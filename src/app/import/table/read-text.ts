import { accept, type Result, refuse } from '../../../trade/result'
import { ownHeadings } from './headings'
import { hasHtmlTable, readHtmlTables } from './read-html'
import { type Sheet, type SheetRefusal, sheetLimits, tidyRows } from './sheet'
import { withoutNeutral } from './write-text'

/** The tables in a text: tab-separated, CSV with any usual separator, or HTML. */
export async function readTextSheets(text: string, name: string): Promise<Result<readonly Sheet[], SheetRefusal>> {
  if (text.includes('\u0000')) return refuse({ code: 'SHEET_FOREIGN' })
  const plain = text.replace(/^\ufeff/, '')
  const isHtml = plain.trimStart().startsWith('<') && hasHtmlTable(plain) && ownSeparator(plain) === null
  const tables = isHtml ? readHtmlTables(plain) : [await readSeparated(plain)]
  return sheetsOf(tables.map((rows, index) => ({ name: tables.length === 1 ? name : `${name} ${index + 1}`, rows })))
}

/** What is left of the tables that were found, held to the limits; refused where nothing is. */
export function sheetsOf(found: readonly Sheet[]): Result<readonly Sheet[], SheetRefusal> {
  const sheets = found.map(({ name, rows }) => ({ name, rows: tidyRows(rows) })).filter(({ rows }) => rows.length > 0)
  const long = sheets.find(({ rows }) => rows.length > sheetLimits.rows)
  if (long)
    return refuse({ code: 'SHEET_TOO_MANY_ROWS', name: long.name, rows: long.rows.length, most: sheetLimits.rows })
  return sheets.length === 0 ? refuse({ code: 'SHEET_EMPTY' }) : accept(sheets)
}

/** Every quoted cell whole, with its line ends; empty rows stay, so that row numbers are those of the file. */
export async function readSeparated(text: string, separator?: string): Promise<string[][]> {
  const { parse } = (await import('papaparse')).default
  const lines = text.replace(/\r\n?/g, '\n')
  const delimiter = separator ?? separatorOf(lines)
  const { data } = parse<string[]>(lines, { delimiter, newline: '\n', preview: sheetLimits.rows + 1 })
  return data.map((row) => row.map(withoutNeutral))
}

/** Tabs where there are any; else the sign that stands in most lines, a semicolon before a comma. */
function separatorOf(text: string): string {
  const own = ownSeparator(text)
  if (own !== null) return own
  const lines = text.split('\n', 200).filter((line) => line.trim() !== '')
  if (lines.some((line) => line.includes('\t'))) return '\t'
  const having = (sign: string) => lines.filter((line) => line.includes(sign)).length
  if (having(';') > 0 && having(';') * 2 >= having(',')) return ';'
  return having('|') > having(',') ? '|' : ','
}

/** A table that this app wrote says its separator in its headings, whatever stands in its cells. */
const ownSeparator = (text: string): string | null =>
  [',', ';'].find((sign) => new RegExp(`^${ownHeadings.join(sign)}\\r?$`, 'm').test(text)) ?? null
