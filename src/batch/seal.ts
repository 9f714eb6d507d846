import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'
import type { Draft, Event, Tip } from './event'

/** Who writes, when and on which installation; ids are handed in so that this room stays pure. */
export interface Seal {
  readonly stream: string
  readonly replica: string
  readonly id: string
  readonly at: string
  readonly by: string
}

/** SHA-256 (hex) of the canonical JSON (RFC 8785) of an event without its hash. */
export function hashOf(event: Omit<Event, 'hash'> & { hash?: string }): string {
  const { hash: _own, ...rest } = event
  return bytesToHex(sha256(utf8ToBytes(canonicalize(rest) ?? '')))
}

/** Gives a draft its place after `tip`. */
export function seal(draft: Draft, tip: Tip, by: Seal): Event {
  const unhashed = {
    v: 1,
    stream: by.stream,
    replica: by.replica,
    n: tip.next,
    id: by.id,
    parents: tip.hash === null ? [] : [tip.hash],
    lamport: tip.lamport + 1,
    kind: draft.kind,
    at: by.at,
    ...(draft.occurredAt === undefined ? {} : { occurredAt: draft.occurredAt }),
    by: by.by,
    source: draft.source ?? { kind: 'typed' as const },
    body: draft.namesHead ? { ...(draft.body as object), head: tip.hash ?? '' } : draft.body,
  }
  return { ...unhashed, hash: hashOf(unhashed) }
}

/** True where the stored hash is that of the stored entry. */
export const isIntact = (event: Event): boolean => event.hash === hashOf(event)
