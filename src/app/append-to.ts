import type { Draft, Event } from '../batch/event'
import { tipOf } from '../batch/tip'
import type { EventLog, Projection } from '../ports/event-log'
import type { Refusal } from './refusals/refusal'
import { sealAll, type Writer } from './writer'

export interface SavingWorld {
  readonly log: EventLog
  readonly writer: Writer
  readonly by: () => string
}

/** Appends one entry to a stream, again where another page was faster; `project` makes its row of all entries. */
export async function appendTo(
  { log, writer, by }: SavingWorld,
  stream: string,
  draft: Draft,
  project: (events: readonly Event[]) => Projection,
): Promise<Refusal | null> {
  for (let tries = 0; tries < 4; tries += 1) {
    const known = await log.read(stream)
    const tip = tipOf(known, writer.replica())
    const events = sealAll(writer, stream, [draft], tip, by())
    const answer = await log.append({ events, after: tip.hash, projection: () => project([...known, ...events]) })
    switch (answer.state) {
      case 'recorded':
      case 'one-copy':
        return null
      case 'not-saved':
        return { code: answer.reason }
      case 'held':
        return { code: 'STORAGE_DEAD' }
      case 'conflict':
        break
    }
  }
  return { code: 'STORAGE_BUSY' }
}
