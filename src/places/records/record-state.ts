import type { BatchSummary } from '../../batch/summary'
import type { MarkKind } from '../../parts/mark'

/** How a batch stands, as a mark and a word. */
export function stateOf(batch: BatchSummary): { kind: MarkKind; word: string } {
  if (batch.stage === 'in-hand') return { kind: 'now', word: 'in hand' }
  if (batch.stage === 'parked') return { kind: 'waiting', word: 'put aside' }
  if (batch.stage === 'abandoned') return { kind: 'closed', word: 'given up' }
  switch (batch.decision) {
    case 'accept':
      return { kind: 'within', word: 'accepted' }
    case 'hold':
      return { kind: 'waiting', word: 'on hold' }
    case 'rework':
      return { kind: 'part', word: 'to rework' }
    default:
      return { kind: 'over', word: 'rejected' }
  }
}
