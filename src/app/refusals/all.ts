import { batchSentences } from './batch'
import { numberSentences } from './numbers'
import type { Refusal } from './refusal'
import { type SentencesOf, sayFrom } from './sentences'
import { storageSentences } from './storage'

export { gateWords } from './gates'

/** The sentences of the bench, whole. */
export const allSentences: SentencesOf<Refusal> = { ...numberSentences, ...batchSentences, ...storageSentences }

export const sayAny = (refusal: Refusal): string => sayFrom(allSentences, refusal)
