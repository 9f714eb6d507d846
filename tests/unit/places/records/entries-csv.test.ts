import Papa from 'papaparse'
import { expect, test } from 'vitest'
import { recordOf } from '../../../../src/batch/record.ts'
import { entriesCsv } from '../../../../src/places/records/entries-csv.ts'
import { wholeBatch } from '../../../support/whole-batch.ts'

const bench = wholeBatch()
for (const text of ['=1+1', '+1', '-1', '@sum', 'plain; with, both "marks"']) bench.intend({ do: 'note', text })
const record = recordOf(bench.state)

test.each([
  [',', ';', '17,91'],
  ['.', ',', '17.91'],
] as const)(
  '[E71] entries leave as a table with decimal %s, one row an entry, struck ones too',
  async (mark, separator, net) => {
    const text = await entriesCsv(record, mark)
    expect(text.startsWith('\ufeffNo.')).toBe(true)
    const [headings = [], ...rows] = rowsOf(text, separator)
    const cell = (row: readonly string[], heading: string): string => row[headings.indexOf(heading)] ?? ''
    const entries = rows.filter((row) => row.length > 1)
    expect(entries.map((row) => cell(row, 'Hash'))).toEqual(bench.events.map(({ hash }) => hash))
    expect(entries.find((row) => cell(row, 'What').includes('Emulsifier'))).toContain(net)
    const struck = entries.filter((row) => cell(row, 'Struck out') !== '')
    expect(struck.map((row) => cell(row, 'Struck out'))).toEqual([expect.stringMatching(/RK: slip of the point$/)])
    expect(entries.find((row) => cell(row, 'Kind') === 'temperature-read')).toContain(`31${mark}1`)
  },
)

test('[E71] no cell is one that a spreadsheet would run', async () => {
  const typed = { ...record, trail: record.trail.map((row) => ({ ...row, source: { ...row.source, raw: '=1+1' } })) }
  for (const mark of [',', '.'] as const) {
    const cells = rowsOf(await entriesCsv(typed, mark), mark === ',' ? ';' : ',').flat()
    expect(cells.filter((cell) => cell === "'=1+1")).toHaveLength(record.trail.length)
    expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([])
  }
})

/** As any spreadsheet reads it. */
const rowsOf = (text: string, delimiter: string): readonly string[][] =>
  Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { delimiter }).data
