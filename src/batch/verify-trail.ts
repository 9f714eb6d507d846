import { firstDifference } from './difference'
import type { Event } from './event'
import { hashOf, isIntact } from './seal'

/** Whether every stored entry still has its hash, and follows one that is there. */
export type Verification =
  | { readonly intact: true; readonly entries: number; readonly head: string | null }
  | {
      readonly intact: false
      readonly entries: number
      readonly head: string | null
      /** The number of the first entry that does not fit, from 1. */
      readonly brokenAt: number
      readonly why: 'CHANGED' | 'MISSING_BEFORE'
      /** What kind of entry it says it is. */
      readonly kind: string
      /** The field that was changed, as a path, where it can be told. */
      readonly field?: string
    }

/**
 * Entries in fold order. Two branches that each follow an entry are in order: two tablets may write at once. `twins` are
 * entries of another copy: where one of them is whole, it tells which field of a changed one was changed.
 */
export function verifyTrail(events: readonly Event[], twins: readonly Event[] = []): Verification {
  const head = events.at(-1)?.hash ?? null
  const seen = new Set<string>()
  for (const [index, event] of events.entries()) {
    const why = faultOf(event, index === 0, seen)
    if (why) {
      const field = why === 'CHANGED' ? changedField(event, events[index + 1], twins) : null
      const found = { brokenAt: index + 1, why, kind: event.kind, ...(field === null ? {} : { field }) }
      return { intact: false, entries: events.length, head, ...found }
    }
    seen.add(event.hash)
  }
  return { intact: true, entries: events.length, head }
}

function faultOf(event: Event, first: boolean, seen: ReadonlySet<string>): 'CHANGED' | 'MISSING_BEFORE' | null {
  if (!isIntact(event)) return 'CHANGED'
  const follows = first
    ? event.parents.length === 0
    : event.parents.length > 0 && event.parents.every((p) => seen.has(p))
  return follows ? null : 'MISSING_BEFORE'
}

/** The next entry names the hash that this one had; another copy has the rest. */
function changedField(event: Event, next: Event | undefined, twins: readonly Event[]): string | null {
  if (next && isIntact(next) && next.parents.includes(hashOf(event))) return 'hash'
  const twin = twinOf(event, twins)
  return twin === undefined ? null : firstDifference(twin, event)
}

/** The same entry as it was written: whatever was changed, its id, its place or its hash is still the same. */
export function twinOf(event: Event, among: readonly Event[]): Event | undefined {
  const whole = among.filter(isIntact)
  return (
    whole.find(({ hash }) => hash === event.hash) ??
    whole.find(({ id }) => id === event.id) ??
    whole.find(({ replica, n }) => replica === event.replica && n === event.n)
  )
}
