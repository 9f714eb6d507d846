import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { readSheetFile } from '../../../../src/app/import/table/read-file'
import { readTextSheets } from '../../../../src/app/import/table/read-text'
import { sheetLimits } from '../../../../src/app/import/table/sheet'
import { sheetSentence } from '../../../../src/app/refusals/forms-spreadsheet'
import { xlsxOf } from '../../../support/xlsx'

const lotion = {
  sheets: [
    {
      name: 'Lotion',
      rows: [
        ['Ingredient', '%'],
        ['Water', 96],
        ['Propanediol', 4],
      ],
    },
  ],
}

const refusalOf = async (bytes: Uint8Array<ArrayBuffer> | string, name = 'formula.xlsx') => {
  const read = await readSheetFile(new File([bytes], name))
  return read.ok ? 'read' : read.refusal.code
}

/** A compound file with one name in its directory, as far as it is looked at. */
const compound = (stream: string) =>
  Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...[...stream].flatMap((s) => [s.charCodeAt(0), 0])])

describe('files that give no table', () => {
  it('[I51] a file of 50 MB is refused by its size, and not a byte of it is read', async () => {
    const file = new File([], 'huge.xlsx')
    Object.defineProperty(file, 'size', { value: 50_000_000 })
    file.arrayBuffer = () => Promise.reject(new Error('it was read'))
    const read = await readSheetFile(file)
    expect(read).toEqual({ ok: false, refusal: { code: 'SHEET_TOO_LARGE', bytes: 50_000_000, most: 5_000_000 } })
    expect(read.ok ? '' : sheetSentence(read.refusal)).toBe(
      'The file is 50 MB, and was not read: 5 MB at most. Save the sheet of this formula by itself.',
    )
  })

  it('[I51] a workbook that would unpack to more than is held is refused before it is unpacked', async () => {
    const bomb = xlsxOf(lotion, { 'xl/sharedStrings.xml': [new Uint8Array(45_000_000), { level: 9 }] })
    expect(bomb.length).toBeLessThan(100_000)
    expect(await refusalOf(bomb)).toBe('SHEET_UNPACKS_TOO_LARGE')
  })

  it('[I51] a workbook that lies about what it unpacks to is damaged, not unpacked', async () => {
    const bytes = xlsxOf(lotion)
    const name = strToU8('xl/worksheets/sheet1.xml')
    const at = bytes.findLastIndex((_, from) => name.every((byte, index) => bytes[from + index] === byte))
    // In the directory the size unpacked stands 22 bytes before the name.
    bytes.set([1, 0, 0, 0], at - 22)
    expect(await refusalOf(bytes)).toBe('SHEET_DAMAGED')
  })

  it('[I51] a workbook cut short or overwritten is damaged', async () => {
    const whole = xlsxOf(lotion)
    expect(await refusalOf(whole.slice(0, whole.length / 2))).toBe('SHEET_DAMAGED')
    const broken = whole.slice()
    broken.fill(0xff, 60, 400)
    expect(await refusalOf(broken)).toBe('SHEET_DAMAGED')
    expect(await refusalOf(xlsxOf(lotion, { 'xl/workbook.xml': strToU8('<workbook><sheets>') }))).not.toBe('read')
    expect(await refusalOf(whole)).toBe('read')
  })

  it('[I51] a workbook with a password, one of the old kind, another archive and a picture each have their own word', async () => {
    expect(await refusalOf(compound('EncryptedPackage'))).toBe('SHEET_LOCKED')
    expect(await refusalOf(compound('Workbook'), 'old.xls')).toBe('SHEET_OLD')
    expect(await refusalOf(Uint8Array.from(zipSync({ 'word/document.xml': strToU8('<w/>') })))).toBe('SHEET_FOREIGN')
    expect(await refusalOf(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13), 'picture.png')).toBe('SHEET_FOREIGN')
    expect(await refusalOf('', 'empty.csv')).toBe('SHEET_EMPTY')
    expect(await refusalOf('\n , ,\n', 'blank.csv')).toBe('SHEET_EMPTY')
  })

  it('[I51] more rows than a formula can have are refused, however they are written', async () => {
    const rows = sheetLimits.rows + 1
    expect(await refusalOf('Water,1\n'.repeat(rows), 'long.csv')).toBe('SHEET_TOO_MANY_ROWS')
    const table = `<table>${'<tr><td>Water</td><td>1</td></tr>'.repeat(rows)}</table>`
    const read = await readTextSheets(table, 'Pasted')
    expect(read.ok ? 'read' : read.refusal.code).toBe('SHEET_TOO_MANY_ROWS')
  })

  it('[I51] a long sheet within the limits is read whole', async () => {
    const rows = Array.from({ length: 1900 }, (_, row) => [`Material number ${row}`, 0.05, 'x'.repeat(300)])
    const bytes = xlsxOf({ sheets: [{ name: 'Long', rows }] })
    const read = await readSheetFile(new File([bytes], 'long.xlsx'))
    expect(read.ok && read.value[0]?.rows.length).toBe(1900)
  })
})
