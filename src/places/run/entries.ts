import type { Event } from '../../batch/event'
import type { BatchState } from '../../batch/state'
import type { EntryState } from '../../parts/entry-mark'

/** The newest entry of a step that still counts: the one its rung speaks for. */
export function latestEntry(
  state: BatchState,
  states: ReadonlyMap<string, EntryState>,
  stepId: string,
): { readonly id: string; readonly state: EntryState } | undefined {
  const step = state.steps.get(stepId)
  const event = step?.weighings.at(-1) ?? step?.portions.at(-1) ?? lastCounting(state, stepId)
  return event && { id: event.id, state: states.get(event.id) ?? 'recorded' }
}

function lastCounting(state: BatchState, stepId: string): Event | undefined {
  if (state.steps.get(stepId)?.finished === undefined) return undefined
  for (let at = state.entries.length - 1; at >= 0; at -= 1) {
    const entry = state.entries[at]
    if (entry && !entry.struck && (entry.event.body as { readonly step?: unknown }).step === stepId) return entry.event
  }
  return undefined
}
