import type { Event } from '../batch/event'
import type { DeviceRow } from '../batch/record-device'
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
  /** SHA-256 (hex) of this header without it. Files of older versions have none. */
  readonly own?: string
}

export type ArchiveRefusal =
  | { readonly code: 'FILE_FOREIGN' }
  | { readonly code: 'FILE_NEWER'; readonly version: number }
  /** `found`: how many entries stand whole before the end. */
  | { readonly code: 'FILE_CUT'; readonly expected: number; readonly found: number }
  /** Line 1 is the header: the entries may be sound, but are not those that it tells of. */
  | { readonly code: 'FILE_DAMAGED'; readonly line: number; readonly entry?: DamagedEntry }
  | { readonly code: 'FILE_TOO_LARGE'; readonly bytes: number }
  /** A file just written does not read back as what was written. */
  | { readonly code: 'FILE_NOT_VERIFIED' }
  | { readonly code: 'STORAGE_FULL' | 'STORAGE_REFUSED' }
  /** Bringing in ended on the way: so many of the file's new entries are in, and a second time goes on from there. */
  | {
      readonly code: 'STOPPED'
      readonly cause: 'asked' | 'full' | 'refused'
      readonly done: number
      readonly of: number
    }

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

/** A file that was written and then read back: what stands in it. */
export interface WrittenArchive {
  readonly file: Blob
  readonly entries: number
  readonly streams: number
  readonly batches: number
  /** Entries that are damaged here; no app would take a file with them, so they are not in it. */
  readonly leftOut: number
}

/**
 * What meets of one stream. `both`: it went on here and in the file, and both stay. `conflict`: an entry of the file
 * stands where another one stands here; it and what follows on it stay out.
 */
export interface Meeting {
  readonly stream: string
  readonly how: 'both' | 'conflict'
  readonly fresh: number
  readonly staysOut: number
  /** Whether the file's last entry comes after everything that is here: of a document it then counts. */
  readonly fileIsLast: boolean
}

/** The streams of one family, by what the file would bring to them. */
export interface KindCount {
  readonly kind: string
  /** Not here at all. */
  readonly fresh: number
  /** Here, and longer in the file. */
  readonly longer: number
  readonly same: number
  readonly meeting: number
}

/** What a file would bring: entries that are new here, already here, or in conflict with what is here. */
export interface ArchivePreview {
  readonly header: ArchiveHeader
  readonly fresh: number
  readonly same: number
  /** Entries that stay out. */
  readonly conflicting: number
  readonly streams: readonly string[]
  /** Entries that follow one which is neither in the file nor here. */
  readonly gaps: readonly { readonly of: string; readonly number: number }[]
  readonly kinds: readonly KindCount[]
  readonly meetings: readonly Meeting[]
  /** Signatures of tablets among what is new here, each with what it is of: its batch's code. */
  readonly signed: readonly (DeviceRow & { readonly of: string })[]
}

/** For what takes long: told how far it is (0–1), and stopped by the signal. */
export interface ArchiveWatch {
  readonly onProgress?: (fraction: number) => void
  readonly signal?: AbortSignal
}

/** Everything can leave and come back: one stream, some, or all. Nothing is overwritten. */
export interface Archive {
  /** Writes and reads back. The file is made in pieces: no more than one of them is held in memory. */
  write(
    streams: readonly string[] | 'all',
    madeAt: string,
    watch?: ArchiveWatch,
  ): Promise<Result<WrittenArchive, ArchiveRefusal>>
  /** Reads and verifies the whole file; changes nothing. */
  inspect(file: Blob, watch?: ArchiveWatch): Promise<Result<ArchivePreview, ArchiveRefusal>>
  /** Verifies again, then applies; importing twice changes nothing the second time. */
  apply(file: Blob, watch?: ArchiveWatch): Promise<Result<ArchivePreview, ArchiveRefusal>>
  /** The entries of a stream as the second copy holds them, in fold order; null where it does not answer. */
  secondCopy(stream: string): Promise<readonly Event[] | null>
}
