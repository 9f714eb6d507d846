import { type Event, inFoldOrder } from '../batch/event'
import type { Family, Projection } from '../ports/event-log'
import { emptySum, mixSum } from './checksum'
import { orderOf } from './head-list'
import type { HeadRow } from './schema'

/** Makes the projection of a whole stream, in fold order. */
export type Project = (stream: string, events: readonly Event[]) => Projection

/** The row of a stream after `events` (in fold order, all newer than the row's last entry) came on top of `row`. */
export function headAfter(row: HeadRow | undefined, events: readonly Event[], projection: Projection): HeadRow | null {
  const last = events.at(-1)
  if (!last) return row ?? null
  return {
    stream: last.stream,
    family: familyOf(last.stream),
    shelf: projection.shelf,
    touchedAt: last.at,
    order: orderOf(last.at),
    count: (row?.count ?? 0) + events.length,
    lamport: last.lamport,
    hash: last.hash,
    sum: events.reduce((sum, event) => mixSum(sum, event.hash), row?.sum ?? emptySum),
    summary: projection.summary,
  }
}

/** The row of a stream made from nothing but its entries. An entry that no projection understands is no obstacle. */
export function headOf(stream: string, events: readonly Event[], project: Project): HeadRow | null {
  const ordered = [...events].sort(inFoldOrder)
  return headAfter(undefined, ordered, projectionOf(stream, ordered, project))
}

function projectionOf(stream: string, events: readonly Event[], project: Project): Projection {
  try {
    return project(stream, events)
  } catch {
    return { shelf: 'unreadable', summary: null }
  }
}

/** A stream's name is `family:id`; a family of a newer version stays what it is called. */
export const familyOf = (stream: string): Family => stream.slice(0, stream.indexOf(':')) as Family
