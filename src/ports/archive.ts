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
  | { readonly code: 'FILE_DAMAGED'; readonly line: number }
  | { readonly code: 'FILE_TOO_LARGE'; readonly bytes: number }
  | { readonly code: 'STORAGE_FULL' | 'STORAGE_REFUSED' }

/** What a file would bring: entries that are new here, already here, or in conflict with what is here. */
export interface ArchivePreview {
  readonly header: ArchiveHeader
  readonly fresh: number
  readonly same: number
  readonly conflicting: number
  readonly streams: readonly string[]
}

/** Everything can leave and come back: one stream, some, or all. Nothing is overwritten. */
export interface Archive {
  write(streams: readonly string[] | 'all', madeAt: string): Promise<Blob>
  /** Reads and verifies the whole file; changes nothing. */
  inspect(file: Blob): Promise<Result<ArchivePreview, ArchiveRefusal>>
  /** Verifies again, then applies; importing twice changes nothing the second time. */
  apply(file: Blob): Promise<Result<ArchivePreview, ArchiveRefusal>>
}
