import type { Result } from './result'
import { evaluateSum } from './typed-sum'
import { type Dimension, type QuantityRefusal, readQuantity } from './units'

/** What was typed that is no plain number: where a dimension is given a quantity with its unit, else a sum. */
export const readTyped = (text: string, dimension?: Dimension): Promise<Result<number, QuantityRefusal>> =>
  dimension ? readQuantity(text, dimension) : evaluateSum(text)
