import type { Draft, Event } from './event'

/** Entries of the stream of a key. The private half stands in none of them: it never leaves its browser. */
export interface KeyBodies {
  /** SPKI, base64. */
  'key-made': { readonly publicKey: string }
  'key-lost': {
    /** Gone with the database or on another tablet; or there, and the browser signs nothing with it. */
    readonly why: 'missing' | 'unusable'
    /** The key that signs from then on. */
    readonly instead: string
  }
}

export type KeyKind = keyof KeyBodies
export type KeyDraft = { [K in KeyKind]: Draft<K, KeyBodies[K]> }[KeyKind]
export type KeyEvent = { [K in KeyKind]: Event<K, KeyBodies[K]> }[KeyKind]

export interface JournalledKey {
  readonly key: string
  readonly madeAt: string
  readonly lost?: KeyBodies['key-lost'] & { readonly at: string }
}

export const keyStream = (key: string): string => `device:${key}`

/** What a person compares: the beginning of the key's digest, in fours. */
export const fingerprintOf = (key: string): string => key.slice(0, 16).replace(/(.{4})(?=.)/g, '$1 ')

/** What a key's stream says of it (in fold order); null where it does not say that the key was made. */
export function keyIn(stream: string, events: readonly Event[]): JournalledKey | null {
  const known = events.filter(isOfKey)
  const made = known.find(({ kind }) => kind === 'key-made')
  if (made === undefined) return null
  const lost = known.find((event) => event.kind === 'key-lost')
  return {
    key: stream.slice(keyStream('').length),
    madeAt: made.at,
    ...(lost === undefined ? {} : { lost: { ...lost.body, at: lost.at } }),
  }
}

const known: { readonly [K in KeyKind]: true } = { 'key-made': true, 'key-lost': true }

/** Bodies are checked where entries come in from outside. */
export const isOfKey = (event: Event): event is KeyEvent => Object.hasOwn(known, event.kind) && event.v === 1
