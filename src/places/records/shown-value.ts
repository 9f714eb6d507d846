import type { Format } from '../../app/format'
import type { ResultRow } from '../../batch/record-results'
import { figure } from './figure'

/** A result with its unit, or what was seen. */
export function shownValue({ body }: ResultRow, format: Format): string {
  if (body.value === undefined) return body.text ?? ''
  const shown = body.property === 'pH' ? figure(body.value, format, 2) : figure(body.value, format)
  return body.unit === undefined ? shown : `${shown} ${body.unit}`
}
