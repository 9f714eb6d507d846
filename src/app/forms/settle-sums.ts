import { isSum } from '../../trade/number-text'
import type { FieldSpec, Values } from './field-spec'
import { showNumber } from './show-fields'

/** The values with every typed sum (250.31-187.02) worked out; one that cannot be stays as it was typed. */
export async function settleSums(specs: readonly FieldSpec[], values: Values, mark: '.' | ','): Promise<Values> {
  const settled: Record<string, string> = { ...values }
  for (const { key, kind } of specs) {
    const text = values[key] ?? ''
    if ((kind === 'number' || kind === 'mass') && isSum(text)) settled[key] = await worthOf(text, mark)
  }
  return settled
}

/** The library of sums is loaded the first time that somebody types one. */
async function worthOf(text: string, mark: '.' | ','): Promise<string> {
  const { evaluateSum } = await import('../../trade/typed-sum')
  const worth = await evaluateSum(text)
  return worth.ok ? showNumber(worth.value, mark) : text
}
