import { decide } from '../batch/decide'
import { foldBatch } from '../batch/fold'
import type { Intention } from '../batch/intention'
import type { BatchSummary } from '../batch/summary'
import { summaryOf } from '../batch/summary-of'
import { emptyTip } from '../batch/tip'
import type { EventLog } from '../ports/event-log'
import { projectBatch } from './project'
import type { Refusal } from './refusals/refusal'
import { sealAll, type Writer } from './writer'

/** Writes the opening entry of a batch. */
export async function startBatch(
  { log, writer }: { readonly log: EventLog; readonly writer: Writer },
  intention: Extract<Intention, { do: 'open' }>,
): Promise<{ readonly summary: BatchSummary } | { readonly refusal: Refusal }> {
  const by = intention.header.people.performs.id
  const context = { nowMs: writer.clock.nowMs(), by, newId: () => writer.ids.next() }
  const decision = decide(null, intention, context)
  if (!decision.ok) return decision
  const sealed = sealAll(writer, `batch:${intention.header.id}`, decision.value, emptyTip, by)
  const state = foldBatch(sealed)
  const answer = await log.append({ events: sealed, after: null, projection: () => projectBatch(state) })
  switch (answer.state) {
    case 'recorded':
    case 'one-copy':
      return { summary: summaryOf(state) }
    case 'not-saved':
      return { refusal: { code: answer.reason } }
    case 'held':
      return { refusal: { code: 'STORAGE_DEAD' } }
    case 'conflict':
      return { refusal: { code: 'STORAGE_BUSY' } }
  }
}
