import type { Event } from '../batch/event'

/** The families of streams; a stream's name is `family:id`. */
export type Family =
  | 'batch'
  | 'formula'
  | 'material'
  | 'lot'
  | 'person'
  | 'balance'
  | 'vessel'
  | 'template'
  | 'picture'
  | 'device'
  | 'settings'

/** Where an entry stands: see the storage rules. While it is being saved it is not listed yet: Record says so. */
export type EntryState = 'recorded' | 'one-copy' | 'held' | 'not-saved'

/** One row a stream: enough to list it without reading its log. `summary` is a projection that can be rebuilt. */
export interface StreamHead {
  readonly stream: string
  readonly family: Family
  readonly shelf: string
  readonly touchedAt: string
  readonly count: number
  readonly lamport: number
  readonly hash: string
  readonly summary: unknown
}

/** A projection made from a whole stream: the shelf it stands on and what lists show of it. */
export interface Projection {
  readonly shelf: string
  readonly summary: unknown
}

export interface AppendRequest {
  readonly events: readonly Event[]
  /** The hash of the last entry the writer had seen, null for a new stream. Another one there: `conflict`. */
  readonly after: string | null
  /** Asked while the log is at work, once for every try. */
  readonly projection: () => Projection
}

export type AppendAnswer =
  | { readonly state: 'recorded' | 'one-copy' }
  | { readonly state: 'conflict' }
  | { readonly state: 'held' }
  | {
      readonly state: 'not-saved'
      readonly reason: 'STORAGE_FULL' | 'STORAGE_REFUSED' | 'STORAGE_NEWER' | 'STORAGE_BLOCKED'
    }

/** An intention kept in the journal while the database is dead; decided when it returns. */
export interface HeldIntention {
  readonly id: string
  readonly stream: string
  readonly at: string
  readonly by: string
  readonly intention: unknown
}

export interface HeadQuery {
  readonly family: Family
  readonly shelf?: string
  readonly limit?: number
  /** Only rows touched before this moment, newest first (for paging). */
  readonly before?: string
}

/** What was found and done about the two copies at start or later. Sentences stand in the app's catalogue. */
export interface HealReport {
  readonly code: 'HEALED_DATABASE' | 'HEALED_JOURNAL' | 'HEALED_BOTH' | 'TORN_LINE' | 'ONE_COPY_ONLY' | 'DAMAGED_ENTRY'
  readonly entries: number
  readonly streams: number
}

export interface StorageState {
  readonly database: 'open' | 'dead' | 'blocked' | 'newer' | 'refused'
  readonly journal: 'open' | 'dead' | 'missing'
  readonly persisted: boolean
  readonly usedBytes: number | null
  readonly quotaBytes: number | null
  readonly compared: boolean
}

/** The durable log of all streams, in two copies. Every promise settles; none rejects for a storage fault. */
export interface EventLog {
  readonly replica: string
  /** The stream's entries in fold order; empty for an unknown stream. */
  read(stream: string): Promise<readonly Event[]>
  append(request: AppendRequest): Promise<AppendAnswer>
  hold(held: HeldIntention): Promise<'held' | 'not-saved'>
  heldIntentions(): Promise<readonly HeldIntention[]>
  releaseHeld(id: string): Promise<void>
  /** Rows newest first. */
  heads(query: HeadQuery): Promise<readonly StreamHead[]>
  head(stream: string): Promise<StreamHead | null>
  /** Entries that this page or another one appended, after they are durable. */
  onAppended(listener: (events: readonly Event[], from: 'this-page' | 'another-page') => void): () => void
  /** An entry that moved between states later (one copy → recorded). */
  onEntryState(listener: (ids: readonly string[], state: EntryState) => void): () => void
  onHealed(listener: (report: HealReport) => void): () => void
  onState(listener: (state: StorageState) => void): () => void
  state(): StorageState
  /** Resolves once both copies have been compared at start and the one behind is healed. */
  ready(): Promise<void>
}

/** Digits half-entered and choices half-made, kept so that a reload or a kill loses none. */
export interface Drafts {
  read(key: string): Promise<string | null>
  all(prefix: string): Promise<ReadonlyMap<string, string>>
  write(key: string, text: string | null): Promise<void>
}
