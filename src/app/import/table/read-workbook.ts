import type { Unzipped } from 'fflate'
import { accept, type Result, refuse } from '../../../trade/result'
import { sheetsOf } from './read-text'
import { type Sheet, type SheetRefusal, sheetLimits } from './sheet'

/**
 * The sheets of a workbook (.xlsx), each cell as the text of its stored value. Formulas are never run: what stands is
 * what the spreadsheet worked out when it was saved. The archive is measured before any of it is unpacked.
 */
export async function readWorkbook(bytes: Uint8Array): Promise<Result<readonly Sheet[], SheetRefusal>> {
  const unpacked = await unpack(bytes)
  if (!unpacked.ok) return unpacked
  const { zipSync } = await import('fflate')
  const { default: readSheets } = await import('read-excel-file/universal')
  try {
    // Stored without compression, so that the reader does not try to start workers, which the page's policy forbids.
    const stored = zipSync(unpacked.value, { level: 0 })
    const sheets = await readSheets(stored.buffer.slice(0, stored.byteLength), { parseNumber: textOfNumber })
    return sheetsOf(sheets.map(({ sheet, data }) => ({ name: sheet, rows: data.map((row) => row.map(textOf)) })))
  } catch {
    return refuse({ code: 'SHEET_DAMAGED' })
  }
}

async function unpack(bytes: Uint8Array): Promise<Result<Unzipped, SheetRefusal>> {
  const { unzipSync } = await import('fflate')
  const most = sheetLimits.unpackedBytes
  const sizes: number[] = []
  try {
    unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (isNeeded(name)) sizes.push(originalSize)
        return false
      },
    })
    const total = sizes.reduce((sum, size) => sum + size, 0)
    if (total > most) return refuse({ code: 'SHEET_UNPACKS_TOO_LARGE', bytes: total, most })
    const files = unzipSync(bytes, { filter: ({ name }) => isNeeded(name) })
    return 'xl/workbook.xml' in files ? accept(files) : refuse({ code: 'SHEET_FOREIGN' })
  } catch {
    return refuse({ code: 'SHEET_DAMAGED' })
  }
}

const isNeeded = (name: string): boolean => /\.xml(?:\.rels)?$/.test(name)

/** 15 digits: what was typed, without the noise of binary fractions (0.30000000000000004) and without an exponent. */
function textOfNumber(stored: string): string {
  const value = Number(stored)
  if (!Number.isFinite(value)) return stored
  const tidy = Number(value.toPrecision(15))
  return /e/i.test(String(tidy)) ? tidy.toFixed(12).replace(/\.?0+$/, '') : String(tidy)
}

function textOf(value: unknown): string {
  if (value === null || value === undefined) return ''
  if (value instanceof Date) return Number.isNaN(value.getTime()) ? '' : value.toISOString().slice(0, 10)
  return String(value)
}
