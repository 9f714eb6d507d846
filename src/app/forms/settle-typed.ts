import { isSum, splitUnit } from '../../trade/number-text'
import { evaluateSum } from '../../trade/typed-sum'
import { dimensionOf, isQuantity, readQuantity } from '../../trade/units'
import type { FieldSpec, Values } from './field-spec'
import { showNumber } from './show-fields'

/** The values with what was typed into each field of a number settled. */
export async function settleTyped(specs: readonly FieldSpec[], values: Values, mark: '.' | ','): Promise<Values> {
  const settled: Record<string, string> = { ...values }
  for (const spec of specs) {
    const text = values[spec.key]
    if (text && isNumeric(spec)) settled[spec.key] = await settleText(text, settledUnit(spec), mark)
  }
  return settled
}

/**
 * A typed sum (250.31-187.02) worked out, and a figure in another unit (1.5 h) put in the unit of its field; what cannot
 * be stays as it was typed. A mass keeps its unit, which is read exactly where the mass is.
 */
export async function settleText(text: string, unit: string, mark: '.' | ','): Promise<string> {
  const plain = await withoutSum(text, mark)
  const dimension = dimensionOf(unit)
  if (dimension === undefined || dimension === 'mass' || !isQuantity(plain, dimension)) return plain
  const read = await readQuantity(plain, dimension, {}, unit)
  return read.ok ? showNumber(read.value, mark) : text
}

async function withoutSum(text: string, mark: '.' | ','): Promise<string> {
  const { number, unit } = splitUnit(text)
  if (!isSum(number)) return text
  const worth = await evaluateSum(number)
  return worth.ok ? `${showNumber(worth.value, mark)} ${unit}`.trim() : text
}

export type NumericSpec = Extract<FieldSpec, { kind: 'number' | 'mass' }>

const isNumeric = (spec: FieldSpec): spec is NumericSpec => spec.kind === 'number' || spec.kind === 'mass'

/** The unit that what is typed comes to; none where other units cannot be told from a difference. */
export const settledUnit = (spec: NumericSpec): string =>
  spec.kind === 'mass' ? 'g' : spec.difference ? '' : (spec.unit ?? '')
