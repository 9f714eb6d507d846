/** The fixtures of bringing in spreadsheets: what each holds, and what it should be understood as. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { guessMapping } from '../../src/app/import/table/columns'
import type { LineAmount } from '../../src/app/import/table/line-amounts'
import { readSheetFile } from '../../src/app/import/table/read-file'
import { readTable } from '../../src/app/import/table/read-table'
import { nothingSettled } from '../../src/app/import/table/settled'
import { columnLetters, type Sheet } from '../../src/app/import/table/sheet'
import { xlsxOf } from './xlsx'

const folder = join(import.meta.dirname, '../fixtures/import')

export const fixtureNames = (): string[] => readdirSync(folder).filter((name) => !name.endsWith('.expected.json'))

export const expectedOf = (name: string): unknown =>
  JSON.parse(readFileSync(join(folder, `${name.replace(/\..*$/, '')}.expected.json`), 'utf8'))

export function fixtureFile(name: string): File {
  const bytes = readFileSync(join(folder, name))
  if (!name.endsWith('.workbook.json')) return new File([Uint8Array.from(bytes)], name)
  return new File([xlsxOf(JSON.parse(bytes.toString()))], name.replace('.workbook.json', '.xlsx'))
}

/** Each sheet of a file as it is understood before anybody has changed anything, short enough to be read. */
export async function understood(file: File): Promise<unknown> {
  const read = await readSheetFile(file)
  return read.ok ? read.value.map(shortly) : read.refusal
}

function shortly(sheet: Sheet) {
  const mapping = guessMapping(sheet)
  const table = readTable(sheet, mapping, nothingSettled)
  const lines = table.rows.flatMap(({ line, phase }) => {
    if (line === null) return []
    const { letter = '' } = table.phases[phase] ?? {}
    return [[letter, line.name, amountText(line.amount), line.inci, line.function].join(' | ').replace(/[ |]+$/, '')]
  })
  const problems = table.rows.flatMap(({ problems }) =>
    problems.map(({ row, column, code }) => `${column === null ? '' : columnLetters(column)}${row + 1} ${code}`),
  )
  return {
    sheet: sheet.name,
    columns: mapping.roles.join(', '),
    ...(table.title === '' ? {} : { title: table.title }),
    phases: table.phases.map(({ letter, name }) => `${letter}: ${name}`),
    lines,
    ...(table.notes.length === 0 ? {} : { notes: table.notes }),
    problems: [...problems, ...table.problems.map(({ code }) => code)],
  }
}

function amountText(amount: LineAmount | null): string {
  if (amount === null) return '?'
  const percent = (fraction: number) => String(Number((fraction * 100).toPrecision(12)))
  switch (amount.kind) {
    case 'qs':
      return 'q.s.'
    case 'fraction':
      return percent(amount.fraction)
    case 'as-needed':
      return `${percent(amount.expected)} (${percent(amount.min)}–${percent(amount.max)})`
  }
}
