import type { Event } from './event'
import { extendBatch } from './extend'
import type { BatchDraft } from './kinds'
import type { BatchState } from './state'

const unsealed = 'unsealed'

/** The batch as it would be after these drafts. Nothing is written and the state itself stays as it is. */
export function whatIf(state: BatchState, drafts: readonly BatchDraft[]): BatchState {
  const last = state.entries.at(-1)?.event
  if (last === undefined) return state
  const events = drafts.map(
    ({ id, ...draft }, index): Event => ({
      source: { kind: 'simulated' },
      ...draft,
      v: 1,
      stream: state.stream,
      replica: last.replica,
      n: last.n + 1 + index,
      id: id ?? `what-if:${index}`,
      parents: index === 0 && state.lastHash !== null ? [state.lastHash] : [unsealed],
      lamport: state.lastLamport + 1 + index,
      at: last.at,
      by: state.person,
      hash: unsealed,
    }),
  )
  return extendBatch(state, events)
}
