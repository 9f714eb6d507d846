import { coveredBy, type NotCovered, notCovered } from './covered'
import type { DeviceSigned } from './device-signature'
import type { Event } from './event'
import { type BatchEvent, isKnown } from './kinds'

/** One signature of a tablet as the record shows it. Whether it fits is not told here: that is the browser's sum. */
export interface DeviceRow {
  readonly entry: string
  readonly stream: string
  readonly signed: DeviceSigned
  /** The number of the last entry that it covers; null where that entry is not here. */
  readonly covers: number | null
  readonly after: NotCovered
}

export interface DeviceRecord {
  readonly rows: readonly DeviceRow[]
  /** The batch ended, and no tablet signed that. */
  readonly isUnsigned: boolean
}

/** Entries in fold order. */
export function deviceRecord(events: readonly Event[]): DeviceRecord {
  const signatures = events.filter(isDeviceSigned)
  const end = events.findLast(({ kind }) => kind === 'closed' || kind === 'abandoned')
  let isUnsigned = end !== undefined
  const rows = signatures.map((event): DeviceRow => {
    const { id, stream, body } = event
    const index = events.findIndex(({ hash }) => hash === body.head)
    const head = events[index]
    const covered = head === undefined ? new Set<Event>() : coveredBy(head, events)
    if (end !== undefined && covered.has(end)) isUnsigned = false
    return {
      entry: id,
      stream,
      signed: body,
      covers: head === undefined ? null : index + 1,
      after: notCovered(covered, events),
    }
  })
  return { rows, isUnsigned }
}

export const isDeviceSigned = (event: Event): event is Extract<BatchEvent, { kind: 'device-signed' }> =>
  isKnown(event) && event.kind === 'device-signed'
