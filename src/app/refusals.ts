import type { BatchRefusal } from '../batch/refusal'
import type { ArchiveRefusal } from '../ports/archive'
import type { ShareRefusal } from '../ports/share'
import { batchSentences } from './refusals/batch'
import { numberSentences, type TypedRefusal } from './refusals/numbers'
import { sayFrom } from './refusals/sentences'
import { type StorageRefusal, storageSentences } from './refusals/storage'

/** Every way in which the bench can say no. What forms say stands with the forms, which are loaded when needed. */
export type Refusal = BatchRefusal | TypedRefusal | StorageRefusal | ArchiveRefusal | ShareRefusal

const sentences = { ...numberSentences, ...batchSentences, ...storageSentences }

/** What a person reads: what, where, what to do. */
export const sentenceOf = (refusal: Refusal): string => sayFrom<Refusal>(sentences, refusal)
