/** A workbook of our own making, as small as the format allows, so that fixtures can be read and changed as text. */
import { strToU8, type Zippable, zipSync } from 'fflate'

export type WorkbookCell =
  | string
  | number
  | null
  | { readonly date: string }
  | { readonly formula: string; readonly value?: number }

export interface WorkbookText {
  readonly sheets: readonly { readonly name: string; readonly rows: readonly (readonly WorkbookCell[])[] }[]
}

/** The bytes of an .xlsx file. `more` are further entries of the archive, or others in place of ours. */
export function xlsxOf({ sheets }: WorkbookText, more: Zippable = {}): Uint8Array<ArrayBuffer> {
  const each = (write: (number: number, name: string) => string) =>
    sheets.map(({ name }, at) => write(at + 1, name)).join('')
  const files: Zippable = {
    '[Content_Types].xml': xml(
      `<Types xmlns="${package_}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>`,
    ),
    'xl/workbook.xml': xml(
      `<workbook xmlns="${main}" xmlns:r="${office}/relationships"><sheets>${each((n, name) => `<sheet name="${escaped(name)}" sheetId="${n}" r:id="rId${n}"/>`)}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': xml(
      `<Relationships xmlns="${package_}/relationships">${each((n) => `<Relationship Id="rId${n}" Type="${office}/relationships/worksheet" Target="worksheets/sheet${n}.xml"/>`)}<Relationship Id="rIdS" Type="${office}/relationships/styles" Target="styles.xml"/></Relationships>`,
    ),
    'xl/styles.xml': xml(
      `<styleSheet xmlns="${main}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
    ),
    ...Object.fromEntries(sheets.map(({ rows }, at) => [`xl/worksheets/sheet${at + 1}.xml`, xml(sheetOf(rows))])),
  }
  return Uint8Array.from(zipSync({ ...files, ...more }))
}

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const office = 'http://schemas.openxmlformats.org/officeDocument/2006'
const package_ = 'http://schemas.openxmlformats.org/package/2006'

const xml = (text: string): Uint8Array => strToU8(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>${text}`)

const sheetOf = (rows: readonly (readonly WorkbookCell[])[]): string =>
  `<worksheet xmlns="${main}"><sheetData>${rows
    .map(
      (row, r) =>
        `<row r="${r + 1}">${row.map((cell, c) => cellOf(`${String.fromCharCode(65 + c)}${r + 1}`, cell)).join('')}</row>`,
    )
    .join('')}</sheetData></worksheet>`

function cellOf(at: string, cell: WorkbookCell): string {
  if (cell === null || cell === '') return ''
  if (typeof cell === 'number') return `<c r="${at}"><v>${cell}</v></c>`
  if (typeof cell === 'string') return `<c r="${at}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`
  if ('date' in cell) return `<c r="${at}" s="1"><v>${Date.parse(cell.date) / 86_400_000 + 25_569}</v></c>`
  const value = cell.value === undefined ? '' : `<v>${cell.value}</v>`
  return `<c r="${at}"${value === '' ? ' t="str"' : ''}><f>${escaped(cell.formula)}</f>${value}</c>`
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
