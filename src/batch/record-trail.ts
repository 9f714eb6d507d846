import type { Event, Source } from './event'
import { type BatchEvent, isKnown } from './kinds'
import { type Stamp, type Struck, stampOf, struckOf } from './record-entries'
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
