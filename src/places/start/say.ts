import { sentenceOf } from '../../app/refusals'
import { type StartRefusal, startSentences } from '../../app/refusals/forms-start'
import { sayFrom } from '../../app/refusals/sentences'
import type { FieldRefusal } from './model'

/** The sentence for whatever Start cannot take. */
export const sayRefusal = (refusal: FieldRefusal): string =>
  isOwn(refusal) ? sayFrom<StartRefusal>(startSentences, refusal) : sentenceOf(refusal)

const isOwn = (refusal: FieldRefusal): refusal is StartRefusal => Object.hasOwn(startSentences, refusal.code)
