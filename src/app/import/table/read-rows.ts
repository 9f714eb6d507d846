import { readAmountText } from './amount-text'
import type { ColumnRole, Mapping } from './mapping'
import { createPhases, type PhasesFound } from './phases'
import { isTotalText, readPhaseCell, readPhaseHeading } from './row-words'
import { cellKey, type RowKind, type Settled } from './settled'
import type { Sheet } from './sheet'

/** One filled row of a sheet with what it was taken for. `phase` counts the phases that were found, −1 before the first. */
export interface PlainRow {
  /** From 0, as in the sheet. */
  readonly row: number
  readonly kind: RowKind
  readonly phase: number
  readonly cells: readonly string[]
}

export interface RowsRead {
  readonly rows: readonly PlainRow[]
  readonly phases: PhasesFound
}

/** The text of a row under the column that has a role; '' where there is none. */
export const textAs = (mapping: Mapping, cells: readonly string[], role: ColumnRole): string =>
  cells[mapping.roles.indexOf(role)] ?? ''

/** Every filled row of a sheet, told apart into lines, phases, totals and notes. A phase holds until the next one. */
export function readRows(sheet: Sheet, mapping: Mapping, settled: Settled): RowsRead {
  const cells = sheet.rows.map((row, at) => row.map((text, column) => settled.cells[cellKey(at, column)] ?? text))
  const phases = createPhases(mapping, cells)
  const last = cells.findLastIndex((row, at) => at > mapping.heading && amountTexts(mapping, row).length > 0)
  const first = cells.findIndex((row, at) => at > mapping.heading && amountTexts(mapping, row).length > 0)
  const ownEnd = cells.findIndex((row, at) => at > mapping.heading && row.every((text) => text === ''))
  const gap = cells.findIndex((row, at) => at > last && (row.every((text) => text === '') || row.some(isTotalText)))
  const end = last === -1 ? -1 : gap === -1 ? cells.length : gap
  const kindOf = mapping.isOwn
    ? (at: number): RowKind => (ownEnd === -1 || at < ownEnd ? 'line' : 'note')
    : (at: number, row: readonly string[]) =>
        guessKind({ at, row, mapping, first, end, headings: cells[mapping.heading] })
  const rows = cells.flatMap((row, at): PlainRow[] => {
    if (row.every((text) => text === '')) return []
    const kind = settled.kinds[at] ?? (at <= mapping.heading ? kindAbove(at, mapping, cells) : kindOf(at, row))
    if (kind === 'phase') phases.enter(phaseOfRow(row))
    if (kind === 'line') phases.take(row)
    return [{ row: at, kind, phase: phases.current(), cells: row }]
  })
  return { rows, phases: phases.found() }
}

/** What stands in the columns of shares and masses. */
const amountTexts = (mapping: Mapping, row: readonly string[]): string[] =>
  [textAs(mapping, row, 'percent'), textAs(mapping, row, 'grams')].filter((text) => text !== '')

function kindAbove(at: number, { heading }: Mapping, cells: readonly (readonly string[])[]): RowKind {
  if (at === heading) return 'heading'
  return at === cells.findIndex((row) => row.some((text) => text !== '')) ? 'title' : 'note'
}

interface Guess {
  readonly at: number
  readonly row: readonly string[]
  readonly mapping: Mapping
  /** The first row with an amount. */
  readonly first: number
  /** Where the lines end: at the total or the empty row after the last amount. */
  readonly end: number
  readonly headings: readonly string[] | undefined
}

function guessKind({ at, row, mapping, first, end, headings }: Guess): RowKind {
  if (headings !== undefined && row.every((text, column) => text === (headings[column] ?? ''))) return 'heading'
  const amounts = amountTexts(mapping, row)
  const words = row.filter((text, column) => text !== '' && !isAmountColumn(mapping, column))
  if (words.some(isTotalText)) return 'total'
  if (words.length === 0) return amounts.some((text) => readAmountText(text, mapping.mark).ok) ? 'total' : 'note'
  if (words.length === 1 && isPhaseRow(words[0] ?? '', row, mapping)) return 'phase'
  if (amounts.length > 0) return 'line'
  if (at >= end || /^(?:notes?|procedure|method|directions|remarks?|\*)/i.test(words[0] ?? '')) return 'note'
  if (at < first && mapping.heading === -1) return at === 0 ? 'title' : 'note'
  return words.length === 1 && isProse(words[0] ?? '') ? 'note' : 'line'
}

const isAmountColumn = ({ roles }: Mapping, column: number): boolean =>
  roles[column] === 'percent' || roles[column] === 'grams'

function isPhaseRow(text: string, row: readonly string[], mapping: Mapping): boolean {
  if (textAs(mapping, row, 'phase') === text) return readPhaseCell(text) !== null
  const phase = readPhaseHeading(text)
  // "C – oil" with an amount is a line that begins with a letter; "Phase C" with one is a phase and its subtotal.
  return phase !== null && (amountTexts(mapping, row).length === 0 || /\b(?:phase|part|stage|teil)\b/i.test(text))
}

const phaseOfRow = (row: readonly string[]): string => row.find((text) => text !== '') ?? ''

const isProse = (text: string): boolean => text.length > 60 || (text.split(' ').length > 5 && /[.!?]$/.test(text))
