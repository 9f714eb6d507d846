import type { Event } from './event'

/**
 * An entry and all that it stands on, wherever they are in fold order: what was not there when it was written is not
 * among them.
 */
export function coveredBy(last: Event, among: readonly Event[]): ReadonlySet<Event> {
  const byHash = new Map(among.map((event) => [event.hash, event]))
  const covered = new Set<Event>()
  const waiting: Event[] = [last]
  for (let event = waiting.pop(); event !== undefined; event = waiting.pop()) {
    if (covered.has(event)) continue
    covered.add(event)
    for (const parent of event.parents) {
      const before = byHash.get(parent)
      if (before) waiting.push(before)
    }
  }
  return covered
}

/** Entries that a signature does not cover and that are no signatures, and how many of them strike something out. */
export interface NotCovered {
  readonly entries: number
  readonly strikes: number
}

export function notCovered(covered: ReadonlySet<Event>, among: readonly Event[]): NotCovered {
  const later = among.filter((event) => !covered.has(event) && !signatureKinds.has(event.kind))
  return { entries: later.length, strikes: later.filter(({ kind }) => kind === 'struck').length }
}

const signatureKinds = new Set(['signed', 'device-signed'])
