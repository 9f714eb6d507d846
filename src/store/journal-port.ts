import type { Event } from '../batch/event'
import type { HeldIntention } from '../ports/event-log'

/** Count and digest of the set of entries that one copy holds of one stream. */
export interface StreamSum {
  readonly stream: string
  readonly count: number
  readonly sum: string
}

export interface JournalTable {
  readonly streams: readonly StreamSum[]
  /** Files whose last line was cut off by the end of their page. */
  readonly torn: number
  /** Whole lines that no longer say what was written. */
  readonly damaged: number
}

/** The second copy of all entries. Every call may reject: then nothing is known of what it wrote. */
export interface Journal {
  /** Appends lines (JSON texts of journal-line.ts) and flushes before it resolves. */
  append(texts: readonly string[]): Promise<void>
  table(): Promise<JournalTable>
  /** The entries of each stream asked for, each once, in no order. */
  read(streams: readonly string[]): Promise<readonly (readonly Event[])[]>
  held(): Promise<readonly HeldIntention[]>
  /** Folds the files of pages that are gone into the segments. Returns how many lines it moved. */
  merge(): Promise<number>
  /** Makes sure that the open file still answers; opens another where it does not. */
  probe(): Promise<void>
  /** Ids of those entries whose content no longer has their hash. */
  damagedOf(events: readonly Event[]): Promise<readonly string[]>
}
