import type { CheckRefusal } from '../../app/refusals/forms-records'
import type { JarResult } from '../../batch/intention'
import { type Measure, readsNumber } from '../../batch/stability-plan'
import { type NumberRefusal, readDecimal } from '../../trade/number-text'

/** What is wrong in a field, by the key of its text. */
export interface JarProblem {
  readonly key: string
  readonly refusal: CheckRefusal | NumberRefusal
}

/** The result that one row's texts make, what is wrong with them, or null where nothing was entered. */
export function readJarRow(
  jar: string,
  measure: Measure,
  textOf: (key: string) => string,
): JarResult | JarProblem | null {
  const key = `${jar} ${measure.id}`
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
