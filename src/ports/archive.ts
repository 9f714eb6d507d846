import type { Event } from '../batch/event'
import type { Result } from '../trade/result'

/** First line of every file that leaves; the lines after it are events, one JSON each. */
export interface ArchiveHeader {
  readonly format: 'pannikin'
  readonly version: number
  readonly madeAt: string
  readonly streams: number
  readonly events: number
  /** SHA-256 (hex) of the event lines, each ended with \n. */
  readonly sha256: string
}

export type ArchiveRefusal =
  | { readonly code: 'FILE_FOREIGN' }
  | { readonly code: 'FILE_NEWER'; readonly version: number }
  | { readonly code: 'FILE_CUT'; readonly expected: number; readonly found: number }
  | { readonly code: 'FILE_DAMAGED'; readonly line: number; readonly entry?: DamagedEntry }
  | { readonly code: 'FILE_TOO_LARGE'; readonly bytes: number }
  | { readonly code: 'STORAGE_FULL' | 'STORAGE_REFUSED' }

/** Which entry of a file is not as it was written. */
export interface DamagedEntry {
  /** Its number among the entries of its stream, from 1. */
  readonly number: number
  /** The batch's code, or the stream's name. */
  readonly of: string
  readonly kind: string
  /** The field, as a path, where it can be told. */
  readonly field?: string
}

/** What a file would bring: entries that are new here, already here, or in conflict with what is here. */
export interface ArchivePreview {
  readonly header: ArchiveHeader
  readonly fresh: number
  readonly same: number
  readonly conflicting: number
  readonly streams: readonly string[]
  /** Entries that follow one which is neither in the file nor here. */
  readonly gaps: readonly { readonly of: string; readonly number: number }[]
}

/** Everything can leave and come back: one stream, some, or all. Nothing is overwritten. */
export interface Archive {
  write(streams: readonly string[] | 'all', madeAt: string): Promise<Blob>
  /** Reads and verifies the whole file; changes nothing. */
  inspect(file: Blob): Promise<Result<ArchivePreview, ArchiveRefusal>>
  /** Verifies again, then applies; importing twice changes nothing the second time. */
  apply(file: Blob): Promise<Result<ArchivePreview, ArchiveRefusal>>
  /** The entries of a stream as the second copy holds them, in fold order; null where it does not answer. */
  secondCopy(stream: string): Promise<readonly Event[] | null>
}
