/** Where an entry's value came from. `raw` is what was typed or what the balance sent, to the letter. */
export interface Source {
  readonly kind: 'typed' | 'balance' | 'scan' | 'simulated'
  readonly raw?: string
  readonly instrumentId?: string
}

/**
 * One entry of one stream, as it is stored for good. Key: [stream, replica, n].
 * `at` and `occurredAt` are ISO 8601 with the local offset; `lamport` orders entries of different replicas.
 */
export interface Event<K extends string = string, B = unknown> {
  readonly v: number
  readonly stream: string
  readonly replica: string
  readonly n: number
  readonly id: string
  readonly parents: readonly string[]
  readonly lamport: number
  readonly kind: K
  readonly at: string
  readonly occurredAt?: string
  readonly by: string
  readonly source: Source
  readonly body: B
  readonly hash: string
}

/** What `decide` asks to be written: the facts, before they get a place in the stream. */
export interface Draft<K extends string = string, B = unknown> {
  readonly kind: K
  readonly body: B
  readonly source?: Source
  readonly occurredAt?: string
  /** Its body says as `head` which entry it stands on: that is known only when it is sealed. */
  readonly namesHead?: true
}

/** The end of a stream as its writer saw it; `next` is this replica's next number in the stream. */
export interface Tip {
  readonly next: number
  readonly lamport: number
  readonly hash: string | null
}

/** Fold order: (lamport, replica, n). */
export function inFoldOrder(a: Event, b: Event): number {
  return a.lamport - b.lamport || (a.replica < b.replica ? -1 : a.replica > b.replica ? 1 : a.n - b.n)
}
