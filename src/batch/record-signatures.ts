import type { Event } from './event'
import { entriesOf, type Stamp } from './record-entries'
import type { BatchState } from './state'

/** One signature as the record shows it, with what came after it. */
export interface SignatureRow extends Stamp {
  readonly person: string
  readonly meaning: string
  readonly how?: 'pin' | 'name'
  readonly pinSetAt?: string
  readonly insteadOf?: string
  readonly reason?: string
  /** Of a second person at a step: what was looked at, and whether it was struck out since. */
  readonly looked?: { readonly step: string; readonly entry: string; readonly struck: boolean }
  /** The number of the last entry that it covers; null where that entry is not here, undefined where none is named. */
  readonly covers?: number | null
  /** Entries that it does not cover and that are no signatures, and how many of them strike something out. */
  readonly after: { readonly entries: number; readonly strikes: number }
}

export function signatureRows(state: BatchState, initialsOf: (id: string) => string): readonly SignatureRow[] {
  const numbers = new Map(state.entries.map(({ event }, index) => [event.hash, index + 1]))
  const struck = new Set(state.entries.flatMap((entry) => (entry.struck ? [entry.event.id] : [])))
  return entriesOf(state, 'signed', initialsOf).map(({ event, struck: _never, ...stamp }) => {
    const { person, meaning, how, pinSetAt, insteadOf, reason, step, entry, head } = event.body
    return {
      ...stamp,
      person: initialsOf(person),
      meaning,
      ...(how === undefined ? {} : { how }),
      ...(pinSetAt === undefined ? {} : { pinSetAt }),
      ...(insteadOf === undefined ? {} : { insteadOf: initialsOf(insteadOf) }),
      ...(reason === undefined ? {} : { reason }),
      ...(step === undefined || entry === undefined ? {} : { looked: { step, entry, struck: struck.has(entry) } }),
      ...(head === undefined ? {} : { covers: head === event.parents[0] ? (numbers.get(head) ?? null) : null }),
      after: step === undefined ? notCovered(state, event) : { entries: 0, strikes: 0 },
    }
  })
}

/** What is no ancestor of the signature was not there when it was given, wherever it stands in fold order. */
function notCovered(state: BatchState, signature: Event): SignatureRow['after'] {
  const byHash = new Map(state.entries.map(({ event }) => [event.hash, event]))
  const covered = new Set<Event>()
  const waiting: Event[] = [signature]
  for (let event = waiting.pop(); event !== undefined; event = waiting.pop()) {
    if (covered.has(event)) continue
    covered.add(event)
    for (const parent of event.parents) {
      const before = byHash.get(parent)
      if (before) waiting.push(before)
    }
  }
  const later = state.entries.filter(({ event }) => !covered.has(event) && event.kind !== 'signed')
  return { entries: later.length, strikes: later.filter(({ event }) => event.kind === 'struck').length }
}
