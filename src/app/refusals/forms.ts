import type { RevisionProblem } from '../../batch/schemas/check-revision'
import type { FieldRefusal } from '../forms/read-fields'
import type { Refusal } from '../refusals'
import { allSentences } from './all'
import { fieldSentences } from './forms-fields'
import { formulaSentences } from './forms-formulas'
import { sayFrom } from './sentences'

/** What forms say: of a field, of a formula as a whole, or of what stood in the way of saving. */
export function formSentenceOf(refusal: FieldRefusal | RevisionProblem | Refusal): string {
  if (isOf(fieldSentences, refusal)) return sayFrom(fieldSentences, refusal)
  if (isOf(formulaSentences, refusal)) return sayFrom(formulaSentences, refusal)
  return sayFrom<Refusal>(allSentences, refusal)
}

const isOf = <C extends string, R extends { readonly code: string }>(
  table: Readonly<Record<C, unknown>>,
  refusal: R,
): refusal is Extract<R, { readonly code: C }> => refusal.code in table
