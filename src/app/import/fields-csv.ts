import { accept, type Result, refuse } from '../../trade/result'
import type { FieldSpec } from '../forms/field-spec'
import { type FieldRefusal, readFields } from '../forms/read-fields'
import { showFields } from '../forms/show-fields'
import { readSeparated } from './table/read-text'
import { tidyRows } from './table/sheet'
import { writeSeparated } from './table/write-text'

/** Why a table of documents is not brought in. Rows and columns count from 0; `heading` is that of the wrong cell. */
export type FieldsCsvRefusal =
  | { readonly code: 'CSV_FOREIGN'; readonly missing: string }
  | { readonly code: 'CSV_EMPTY' }
  | { readonly code: 'CSV_ID_MISSING'; readonly row: number }
  | { readonly code: 'CSV_ID_TWICE'; readonly row: number; readonly id: string }
  | { readonly code: 'CSV_CELL_WRONG'; readonly row: number; readonly heading: string; readonly why: FieldRefusal }

type Document = { readonly id: string }

const idHeading = 'Id'

/** Documents as a table: a row each, under the labels of their form. Fields that the form has not are not in it. */
export function fieldsCsv(
  specs: readonly FieldSpec[],
  documents: readonly Document[],
  mark: '.' | ',',
): Promise<string> {
  const rows = documents.map((document) => {
    const shown = showFields(specs, document, mark)
    return [document.id, ...specs.map(({ key }) => shown[key] ?? '')]
  })
  return writeSeparated([[idHeading, ...specs.map(({ label }) => label)], ...rows], mark)
}

/**
 * The documents of such a table, its columns in any order. One that is here already keeps the fields that the form has
 * not. The first wrong cell refuses the whole.
 */
export async function readFieldsCsv(
  text: string,
  specs: readonly FieldSpec[],
  here: ReadonlyMap<string, object>,
): Promise<Result<readonly Record<string, unknown>[], FieldsCsvRefusal>> {
  const plain = text.replace(/^\ufeff/, '')
  // As it was saved the first heading is followed by the separator; moved elsewhere the lines tell it.
  const [, separator] = new RegExp(`^${idHeading}([,;\\t])`).exec(plain) ?? []
  const [headings = [], ...rows] = tidyRows(await readSeparated(plain, separator))
  const missing = [idHeading, ...specs.map(({ label }) => label)].find((label) => !headings.includes(label))
  if (missing !== undefined) return refuse({ code: 'CSV_FOREIGN', missing })
  const documents: Record<string, unknown>[] = []
  const seen = new Set<string>()
  for (const [at, row] of rows.entries()) {
    if (row.every((cell) => cell === '')) continue
    const id = row[headings.indexOf(idHeading)] ?? ''
    if (id === '') return refuse({ code: 'CSV_ID_MISSING', row: at + 1 })
    if (seen.has(id)) return refuse({ code: 'CSV_ID_TWICE', row: at + 1, id })
    seen.add(id)
    const values = Object.fromEntries(specs.map(({ key, label }) => [key, row[headings.indexOf(label)] ?? '']))
    const read = readFields(specs, values, here.get(id) ?? { id })
    if (!read.ok) {
      const wrong = specs.find(({ key }) => read.refusal[key] !== undefined)
      const why = read.refusal[wrong?.key ?? '']
      if (wrong && why) return refuse({ code: 'CSV_CELL_WRONG', row: at + 1, heading: wrong.label, why })
    } else documents.push(read.value)
  }
  return documents.length === 0 ? refuse({ code: 'CSV_EMPTY' }) : accept(documents)
}
