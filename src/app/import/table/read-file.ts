import { type Result, refuse } from '../../../trade/result'
import { readTextSheets } from './read-text'
import { readWorkbook } from './read-workbook'
import { type Sheet, type SheetRefusal, sheetLimits } from './sheet'

/** The tables of a file, told by what is in it, not by its name. A file that is too large is not read at all. */
export async function readSheetFile(file: File): Promise<Result<readonly Sheet[], SheetRefusal>> {
  const most = sheetLimits.fileBytes
  if (file.size > most) return refuse({ code: 'SHEET_TOO_LARGE', bytes: file.size, most })
  if (file.size === 0) return refuse({ code: 'SHEET_EMPTY' })
  const bytes = new Uint8Array(await file.arrayBuffer())
  const starts = (...signs: number[]) => signs.every((sign, at) => bytes[at] === sign)
  if (starts(0x50, 0x4b, 0x03, 0x04)) return readWorkbook(bytes)
  if (starts(0xd0, 0xcf, 0x11, 0xe0)) return refuse({ code: isLocked(bytes) ? 'SHEET_LOCKED' : 'SHEET_OLD' })
  if (starts(0x50, 0x4b)) return refuse({ code: 'SHEET_DAMAGED' })
  return readTextSheets(decode(bytes), file.name.replace(/\.[^.]*$/, ''))
}

/** A workbook with a password is a compound file with this stream in it; one without is the format before .xlsx. */
function isLocked(bytes: Uint8Array): boolean {
  const wanted = [...'EncryptedPackage'].flatMap((sign) => [sign.charCodeAt(0), 0])
  for (let at = bytes.indexOf(wanted[0] ?? 0); at !== -1; at = bytes.indexOf(wanted[0] ?? 0, at + 1))
    if (wanted.every((byte, index) => bytes[at + index] === byte)) return true
  return false
}

/** UTF-8, UTF-16 where its mark stands at the start, or else the code page of old spreadsheets. */
function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
