import { describe, expect, it } from 'vitest'
import { guessMapping } from '../../../../src/app/import/table/columns'
import { readSheetFile } from '../../../../src/app/import/table/read-file'
import { readTable } from '../../../../src/app/import/table/read-table'
import { nothingSettled } from '../../../../src/app/import/table/settled'
import { rowSentence, tableSentence } from '../../../../src/app/refusals/forms-spreadsheet'
import { fixtureFile, fixtureNames } from '../../../support/import-fixtures'

const saidOf = async (name: string) => {
  const read = await readSheetFile(fixtureFile(name))
  return (read.ok ? read.value : []).flatMap((sheet) => {
    const table = readTable(sheet, guessMapping(sheet), nothingSettled)
    return [...table.rows.flatMap(({ problems }) => problems.map(rowSentence)), ...table.problems.map(tableSentence)]
  })
}

describe('what was not understood', () => {
  it('[I58] each bad amount is said with its row, its column and what to do', async () => {
    expect(await saidOf('20-bad-amounts.tsv')).toEqual([
      'Row 3, column B: "-4" is below zero. Type the share without the minus.',
      'Row 4, column B: "1-2" is a range. Type one share, or what is expected with its ends: 0.5 (0–1.5).',
      'Row 5, column B: "drops" in "3 drops" is not a unit that shares are made of. Weigh it once, and type its share.',
      'Row 6, column B: "2026-03-05" is a date. Spreadsheets make dates of figures such as 3.5: type the share.',
      'Row 7, column B: "=B3*2" is a sum of the spreadsheet, which is not run here. Type its result.',
      'Row 8, column B: "a little" is not a share. Type a number, or q.s.',
      'Row 9, column B: a share of nothing. Type a share, or leave the row out.',
      'Row 10, column B: "150" is more than the whole batch. Check the decimal mark.',
      'Row 11, column B: there is no share here. Type one, or leave the row out.',
    ])
  })

  it('[I58] sums that do not hold are said with their figures', async () => {
    expect(await saidOf('07-total-differs.tsv')).toEqual([
      'Row 5, column B: the sheet says 100 %, and the lines come to 99.5 %. Check the lines, or leave this row out.',
      'The lines come to 99.5 %, not 100 %, and none is q.s. Change a share, or choose the line that makes up to 100 %.',
    ])
    expect(await saidOf('17-two-qs.tsv')).toEqual([
      'Row 4, column B: row 2 makes up to 100 % already. Type a share here, or there.',
    ])
    expect(await saidOf('19-over-hundred-with-qs.tsv')).toEqual([
      'The other lines come to 114 %, which leaves nothing for row 2 to make up. Check the decimal mark and the shares.',
    ])
    expect(await saidOf('21-something-else.tsv')).toEqual([
      'No column here looks like the names of materials. Choose it above; if there is none, this is not the table of a formula.',
    ])
  })

  it('[I58] every sentence of every fixture ends as one, without shouting', async () => {
    const said = (await Promise.all(fixtureNames().map(saidOf))).flat()
    expect(said.length).toBeGreaterThan(15)
    for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*[.]$/)
    expect(said.join(' ')).not.toMatch(/!|undefined|NaN/)
  })
})
