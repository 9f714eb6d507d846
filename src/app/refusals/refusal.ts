import type { BatchRefusal } from '../../batch/refusal'
import type { ArchiveRefusal } from '../../ports/archive'
import type { ShareRefusal } from '../../ports/share'
import type { TypedRefusal } from './numbers'
import type { StorageRefusal } from './storage'

/** Every way in which the bench can say no. What forms say stands with the forms, which are loaded when needed. */
export type Refusal = BatchRefusal | TypedRefusal | StorageRefusal | ArchiveRefusal | ShareRefusal
