import type { Draft, Event } from './event'

/** What is kept of a PIN. It stands in the person's own stream and in no other document. */
export interface Pin {
  readonly salt: string
  readonly hash: string
  readonly iterations: number
}

/** Entries of a person's stream beside the saved document. */
export interface PersonBodies {
  'pin-set': {
    readonly pin: Pin
    /** The first one; in place of one that was given; in place of one that was forgotten. */
    readonly how: 'first' | 'changed' | 'forgotten'
    readonly reason?: string
  }
  'pin-removed': Record<string, never>
}

export type PersonKind = keyof PersonBodies
export type PersonDraft = { [K in PersonKind]: Draft<K, PersonBodies[K]> }[PersonKind]
type PersonEvent = { [K in PersonKind]: Event<K, PersonBodies[K]> }[PersonKind]

export interface KeptPin {
  readonly pin: Pin
  readonly setAt: string
}

/** The PIN that counts in a person's stream (in fold order); null where there is none, or it was taken away. */
export function pinIn(events: readonly Event[]): KeptPin | null {
  const last = events.findLast(isOfPerson)
  return last?.kind === 'pin-set' ? { pin: last.body.pin, setAt: last.at } : null
}

const known: { readonly [K in PersonKind]: true } = { 'pin-set': true, 'pin-removed': true }

/** Bodies are checked where entries come in from outside. */
export const isOfPerson = (event: Event): event is PersonEvent => Object.hasOwn(known, event.kind) && event.v === 1
