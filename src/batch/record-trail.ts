import type { Event, Source } from './event'
import { type BatchEvent, isKnown } from './kinds'
import { type Stamp, type Struck, stampOf, struckOf } from './record-entries'
import { isIntact } from './seal'
import type { BatchState } from './state'

/** One entry of the trail, as it stands in the log. */
export interface TrailRow extends Stamp {
  readonly number: number
  readonly event: Event
  /** False for a kind that this version does not know: shown all the same. */
  readonly known: boolean
  readonly source: Source
  /** The instrument it was read on, as far as it is known. */
  readonly device?: string
  readonly struck?: Struck
}

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
    }

export function trailOf(state: BatchState, initialsOf: (id: string) => string): readonly TrailRow[] {
  return state.entries.map((entry, index) => ({
    ...stampOf(entry, initialsOf),
    ...struckOf(entry, initialsOf),
    number: index + 1,
    event: entry.event,
    known: isKnown(entry.event),
    source: entry.event.source,
    ...deviceOf(state, entry.event, index),
  }))
}

/** A mass was read on its balance, a pH on the meter that was checked last before it. */
function deviceOf(state: BatchState, event: Event, index: number): Pick<TrailRow, 'device'> {
  if (!isKnown(event)) return {}
  const device = nameOfDevice(state, event, index)
  return device === undefined ? {} : { device }
}

function nameOfDevice(state: BatchState, event: BatchEvent, index: number): string | undefined {
  switch (event.kind) {
    case 'weighed':
    case 'adjusted': {
      const { balance, line } = event.body
      return state.header.balances.find(({ id }) => id === balance)?.name ?? state.plan.lines.get(line)?.balance.name
    }
    case 'made-up':
      return state.plan.lines.get(event.body.line)?.balance.name
    case 'measured':
      return event.body.property === 'pH' ? meterBefore(state, index) : undefined
    default:
      return event.source.instrumentId
  }
}

function meterBefore(state: BatchState, index: number): string | undefined {
  const last = state.entries.slice(0, index).findLast(({ event, struck }) => !struck && isMeterCheck(event))?.event
  return last && isMeterCheck(last) && 'name' in last.body.instrument ? last.body.instrument.name : undefined
}

const isMeterCheck = (event: Event): event is Extract<BatchEvent, { kind: 'instrument-checked' }> =>
  isKnown(event) && event.kind === 'instrument-checked' && event.body.instrument.kind === 'pH meter'

/** Entries in fold order. Two branches that each follow an entry are in order: two tablets may write at once. */
export function verifyTrail(events: readonly Event[]): Verification {
  const head = events.at(-1)?.hash ?? null
  const seen = new Set<string>()
  for (const [index, event] of events.entries()) {
    const why = faultOf(event, index === 0, seen)
    if (why) return { intact: false, entries: events.length, head, brokenAt: index + 1, why }
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
