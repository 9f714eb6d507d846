import { type DocumentSaved, documentKind } from '../batch/document'
import type { Event } from '../batch/event'
import { foldBatch } from '../batch/fold'
import type { BatchState } from '../batch/state'
import { shelfOf, summaryOf } from '../batch/summary-of'
import type { Projection } from '../ports/event-log'

/** The row of a batch in lists. */
export function projectBatch(state: BatchState): Projection {
  const summary = summaryOf(state)
  return { shelf: shelfOf(summary), summary }
}

/** The row of any stream, made from its log: what a heal, a restore or a merge rebuilds rows with. */
export function projectStream(stream: string, events: readonly Event[]): Projection {
  if (stream.startsWith('batch:')) {
    try {
      return projectBatch(foldBatch(events))
    } catch {
      // A log without its opening entry, cut or foreign: kept, listed as damaged, never dropped.
      return { shelf: 'damaged', summary: null }
    }
  }
  return projectDocument(documentOf(events))
}

export function projectDocument(document: unknown): Projection {
  const archived =
    typeof document === 'object' && document !== null && 'archived' in document && document.archived === true
  return { shelf: archived ? 'archived' : 'here', summary: document }
}

/** The document that counts: the last one saved. */
function documentOf(events: readonly Event[]): unknown {
  const last = events.findLast((event) => event.kind === documentKind)
  return isSaved(last?.body) ? last.body.document : null
}

const isSaved = (body: unknown): body is DocumentSaved<unknown> =>
  typeof body === 'object' && body !== null && 'document' in body
