import { type Event, inFoldOrder } from '../batch/event'
import type { KindCount, Meeting } from '../ports/archive'
import { keyOf } from './entry-key'
import { familyOf } from './head-row'

/** What a file would bring to one stream. */
export interface StreamMeeting extends Pick<Meeting, 'stream' | 'fileIsLast'> {
  readonly fresh: readonly Event[]
  readonly same: number
  readonly staysOut: number
  readonly how: 'fresh' | 'longer' | 'same' | Meeting['how']
}

/**
 * An entry whose place holds another one here stays out, and with it all that follows on it: let in, it would follow on
 * nothing. `offered` in fold order.
 */
export function meet(stream: string, present: readonly Event[], offered: readonly Event[]): StreamMeeting {
  const here = new Map(present.map((event) => [placeOf(event), event.hash]))
  const out = new Set<string>()
  const fresh: Event[] = []
  let same = 0
  for (const event of offered) {
    const hash = here.get(placeOf(event))
    if (hash === event.hash) same += 1
    else if (hash !== undefined || event.parents.some((parent) => out.has(parent))) out.add(event.hash)
    else {
      fresh.push(event)
      here.set(placeOf(event), event.hash)
    }
  }
  const how = out.size > 0 ? 'conflict' : howOf(present.length, fresh.length, same)
  return { stream, fresh, same, staysOut: out.size, how, fileIsLast: isLast(fresh.at(-1), present) }
}

function howOf(present: number, fresh: number, same: number): Exclude<StreamMeeting['how'], 'conflict'> {
  if (present === 0) return 'fresh'
  if (fresh === 0) return 'same'
  return present > same ? 'both' : 'longer'
}

const placeOf = (event: Event): string => keyOf(event).join('\n')

const isLast = (last: Event | undefined, present: readonly Event[]): boolean =>
  last !== undefined && present.every((event) => inFoldOrder(event, last) < 0)

/** Counts streams by family, in the order they came. */
export function countKinds(): { add(meeting: StreamMeeting): void; kinds(): readonly KindCount[] } {
  const counts = new Map<string, { kind: string; fresh: number; longer: number; same: number; meeting: number }>()
  return {
    add: ({ stream, how }) => {
      const kind = familyOf(stream)
      const row = counts.get(kind) ?? { kind, fresh: 0, longer: 0, same: 0, meeting: 0 }
      row[how === 'both' || how === 'conflict' ? 'meeting' : how] += 1
      counts.set(kind, row)
    },
    kinds: () => [...counts.values()],
  }
}
