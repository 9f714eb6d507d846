import type { Draft, Event, Tip } from '../batch/event'
import { isoOf } from '../batch/iso-of'
import { seal } from '../batch/seal'
import type { Clock } from '../ports/clock'
import type { Ids } from '../ports/ids'

/** What it takes to give drafts their place in a stream. */
export interface Writer {
  readonly replica: () => string
  readonly clock: Clock
  readonly ids: Ids
}

/** Seals drafts one behind the other after `tip`, all at one moment. */
export function sealAll(
  writer: Writer,
  stream: string,
  drafts: readonly (Draft & { readonly id?: string })[],
  tip: Tip,
  by: string,
): readonly Event[] {
  const at = isoOf(writer.clock.nowMs(), writer.clock.offsetMinutes())
  const events: Event[] = []
  let after = tip
  for (const { id, ...draft } of drafts) {
    const event = seal(draft, after, { stream, replica: writer.replica(), id: id ?? writer.ids.next(), at, by })
    events.push(event)
    after = { next: event.n + 1, lamport: event.lamport, hash: event.hash }
  }
  return events
}
