import type { SaveImportRefusal } from '../import/save-import'
import { columnLetters, type SheetRefusal } from '../import/table/sheet'
import type { RowProblem, TableProblem } from '../import/table/table-problem'
import { formSentenceOf } from './forms'
import { type SentencesOf, sayFrom } from './sentences'

/** Why a file or a paste gave no table. Nothing has been changed then. */
export const sheetSentence = (refusal: SheetRefusal): string => sayFrom<SheetRefusal>(sheets, refusal)

/** Where it is and what is wrong: "Row 4, column C: …". */
export function rowSentence(problem: RowProblem): string {
  const column = problem.column === null ? '' : `, column ${columnLetters(problem.column)}`
  return `Row ${problem.row + 1}${column}: ${sayFrom<RowProblem>(rows, problem)}`
}

export const tableSentence = (problem: TableProblem): string => sayFrom<TableProblem>(tables, problem)

/** Why the formula was not saved, and what of it is there all the same. */
export function saveSentence(refusal: SaveImportRefusal): string {
  if (refusal.code === 'DOCUMENT_FIELD_WRONG') return `Nothing is saved: ${refusal.path} should be ${refusal.wanted}.`
  if (refusal.code !== 'SAVING_STOPPED') return formSentenceOf(refusal)
  const { done, of, why } = refusal
  const materials =
    of === 0
      ? 'Nothing is saved'
      : `${done} of ${of} new materials ${done === 1 ? 'is' : 'are'} saved, the formula is not`
  return `${materials}: ${formSentenceOf(why)} Save again to go on from there.`
}

const sheets: SentencesOf<SheetRefusal> = {
  SHEET_TOO_LARGE: ({ bytes, most }) =>
    `The file is ${megabytes(bytes)}, and was not read: ${megabytes(most)} at most. Save the sheet of this formula by itself.`,
  SHEET_UNPACKS_TOO_LARGE: ({ bytes, most }) =>
    `The workbook unpacks to ${megabytes(bytes)}, and was not unpacked: ${megabytes(most)} at most. Save the sheet of this formula by itself.`,
  SHEET_TOO_MANY_ROWS: ({ name, rows, most }) =>
    `"${short(name)}" has ${rows > most + 1 ? rows : `more than ${most}`} rows: ${most} at most. Copy the rows of the formula alone and paste them here.`,
  SHEET_EMPTY: () => 'There is nothing in it. Copy the cells of the formula, with their headings, and paste them here.',
  SHEET_FOREIGN: () => 'That is no table: it can be a workbook (.xlsx), CSV, or cells copied from a spreadsheet.',
  SHEET_LOCKED: () =>
    'The workbook is locked with a password. Save a copy without one, or copy its cells and paste them.',
  SHEET_OLD: () => 'The workbook is of the old kind (.xls). Save it as .xlsx or CSV, or copy its cells and paste them.',
  SHEET_DAMAGED: () => 'The workbook is damaged or cut short. Copy it again from where it came, or paste its cells.',
}

const rows: SentencesOf<RowProblem> = {
  AMOUNT_MISSING: () => 'there is no share here. Type one, or leave the row out.',
  AMOUNT_FORMULA: ({ text }) => `"${short(text)}" is a sum of the spreadsheet, which is not run here. Type its result.`,
  AMOUNT_DATE: ({ text }) =>
    `"${short(text)}" is a date. Spreadsheets make dates of figures such as 3.5: type the share.`,
  AMOUNT_RANGE: ({ text }) =>
    `"${short(text)}" is a range. Type one share, or what is expected with its ends: 0.5 (0–1.5).`,
  AMOUNT_OPEN: ({ text }) =>
    `"${short(text)}" goes in as needed. Type what is expected with its ends, such as 0.5 (0–1.5).`,
  AMOUNT_UNCLEAR: ({ text }) => `"${short(text)}" is not a share. Type a number, or q.s.`,
  AMOUNT_NEGATIVE: ({ text }) => `"${short(text)}" is below zero. Type the share without the minus.`,
  AMOUNT_UNIT: ({ unit, text }) =>
    `"${short(unit)}" in "${short(text)}" is not a unit that shares are made of. Weigh it once, and type its share.`,
  AMOUNT_OVER: ({ text }) => `"${short(text)}" is more than the whole batch. Check the decimal mark.`,
  AMOUNT_ZERO: () => 'a share of nothing. Type a share, or leave the row out.',
  LINE_NO_NAME: () => 'there is a share but no name. Type the name, or leave the row out.',
  LINE_NAME_LONG: () => 'the name is longer than 200 characters. Type a shorter one, or take the row for a note.',
  LINE_QS_TWICE: ({ first }) => `row ${first + 1} makes up to 100 % already. Type a share here, or there.`,
  TOTAL_DIFFERS: ({ stated, sum, unit }) =>
    `the sheet says ${figure(stated, unit)}, and the lines come to ${figure(sum, unit)}. Check the lines, or leave this row out.`,
}

const tables: SentencesOf<TableProblem> = {
  TABLE_NO_NAMES: () =>
    'No column here looks like the names of materials. Choose it above; if there is none, this is not the table of a formula.',
  TABLE_NO_AMOUNTS: () =>
    'No column here looks like shares or masses. Choose it above; if there is none, this is not the table of a formula.',
  TABLE_NO_LINES: () => 'No row here is a line of a formula. Choose another sheet, or check what the columns hold.',
  TABLE_TOTAL_UNKNOWN: () => 'The masses do not say what they make in all. Type what the whole batch weighs.',
  TABLE_NOT_WHOLE: ({ total }) =>
    `The lines come to ${figure(total, '%')}, not 100 %, and none is q.s. Change a share, or choose the line that makes up to 100 %.`,
  TABLE_QS_NEGATIVE: ({ row, others }) =>
    `The other lines come to ${figure(others, '%')}, which leaves nothing for row ${row + 1} to make up. Check the decimal mark and the shares.`,
  TABLE_TOO_MANY_LINES: ({ lines, most }) => `There are ${lines} lines: ${most} at most in one formula.`,
  TABLE_TOO_MANY_PHASES: ({ phases, most }) =>
    `There are ${phases} phases: ${most} at most. Check which column holds the phase.`,
}

const figure = (value: number, unit: '%' | 'g'): string =>
  `${Number((unit === '%' ? value * 100 : value).toFixed(4))} ${unit}`

const megabytes = (bytes: number): string => `${Number((bytes / 1e6).toPrecision(3))} MB`

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text)
