import type { CheckRefusal } from '../../app/refusals/forms-records'
import type { JarResult } from '../../batch/intention'
import { type Measure, readsNumber } from '../../batch/stability-plan'
import { type NumberRefusal, readDecimal } from '../../trade/number-text'
import { readRow } from './rested-result'
import type { RestedRow, RowTexts } from './rested-row'

/** What is wrong in a field, by the key of its text. */
export interface JarProblem {
  readonly key: string
  readonly refusal: CheckRefusal | NumberRefusal
}

/** The text of a field of a row; its first reading is kept under the row's own key. */
export const fieldKey = (row: string, field: string): string => (field === 'reading.0' ? row : `${row} ${field}`)

/** The row of a measure that is read with spindle, speed and torque, as in the checks of the batch; undefined for others. */
export const viscosityRow = (key: string, measure: Measure): RestedRow | undefined =>
  measure.property === 'viscosity' ? { key, kind: 'viscosity', check: measure } : undefined

/** The result that one row's texts make, what is wrong with them, or null where nothing was entered. */
export function readJarRow(
  jar: string,
  measure: Measure,
  textOf: (key: string) => string,
): JarResult | JarProblem | null {
  const key = `${jar} ${measure.id}`
  const row = viscosityRow(key, measure)
  if (row) return readViscosity(row, measure, (field) => textOf(fieldKey(key, field)))
  const [text, good] = [textOf(key).trim(), textOf(`${key} good`)]
  if (readsNumber(measure)) {
    if (text === '') return null
    const read = readDecimal(text, { negative: measure.property === 'temperature' || measure.property === 'other' })
    return read.ok ? { measure: measure.id, value: read.value } : { key, refusal: read.refusal }
  }
  if (text === '' && good === '') return null
  if (good === '') return { key, refusal: { code: 'CHECK_NOT_JUDGED' } }
  if (good === 'no' && text === '') return { key, refusal: { code: 'CHECK_NOT_SEEN' } }
  return { measure: measure.id, good: good === 'yes', ...(text === '' ? {} : { text }) }
}

function readViscosity(row: RestedRow, { id }: Measure, text: RowTexts): JarResult | JarProblem | null {
  const read = readRow(row, text)
  if (read === null) return null
  if ('refusal' in read) return { key: fieldKey(row.key, read.field), refusal: read.refusal }
  const { value, readings, how, sampleC } = read
  return {
    measure: id,
    ...(value === undefined ? {} : { value }),
    ...(readings === undefined ? {} : { readings }),
    ...(how === undefined ? {} : { how }),
    ...(sampleC === undefined ? {} : { sampleC }),
  }
}
