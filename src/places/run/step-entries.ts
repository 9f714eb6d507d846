import type { Event } from '../../batch/event'
import { canBeStruck } from '../../batch/fold'
import type { BatchState } from '../../batch/state'
import type { EntryState } from '../../parts/entry-mark'

/** An entry of a step as the screen lists it. `state` says where it stands; struck ones stay legible. */
export interface StepEntry {
  readonly event: Event
  readonly state: EntryState
  readonly struck: string | null
  readonly strikable: boolean
}

/** Entries that name the step, oldest first. */
export function entriesOfStep(
  state: BatchState,
  states: ReadonlyMap<string, EntryState>,
  stepId: string,
): readonly StepEntry[] {
  return state.entries
    .filter(({ event }) => (event.body as { readonly step?: unknown }).step === stepId)
    .map(({ event, struck }) => ({
      event,
      state: states.get(event.id) ?? 'recorded',
      struck: struck?.reason ?? null,
      strikable: canBeStruck(event.kind) && struck === undefined,
    }))
}
