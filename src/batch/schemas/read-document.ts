import * as v from 'valibot'
import { accept, type Result, refuse } from '../../trade/result'

/** Where a document is not what it should be: `path` as in `formulas[0].name`, `wanted` completes "should be …". */
export interface DocumentRefusal {
  readonly code: 'DOCUMENT_FIELD_WRONG'
  readonly path: string
  readonly wanted: string
  /** What stands there, shortened; empty where nothing does. */
  readonly found: string
}

/** Checks foreign data against a schema. Fields that the schema does not name are left behind. */
export function readDocument<T>(schema: v.GenericSchema<unknown, T>, data: unknown): Result<T, DocumentRefusal> {
  const read = v.safeParse(schema, data, { abortEarly: true })
  if (read.success) return accept(read.output)
  const [issue] = read.issues
  return refuse({
    code: 'DOCUMENT_FIELD_WRONG',
    path: pathOf(issue),
    wanted: issue.input === undefined ? 'there' : issue.message,
    found: shorten(issue.input),
  })
}

const pathOf = (issue: v.BaseIssue<unknown>): string =>
  (issue.path ?? []).reduce((path, { key }) => {
    if (typeof key === 'number') return `${path}[${key}]`
    return path === '' ? String(key) : `${path}.${String(key)}`
  }, '')

function shorten(found: unknown): string {
  if (found === undefined) return ''
  const text = JSON.stringify(found) ?? String(found)
  return text.length > 60 ? `${text.slice(0, 59)}…` : text
}
