import { signal } from '@preact/signals'
import type { Event } from '../batch/event'
import { foldBatch } from '../batch/fold'
import type { EntryState } from '../ports/event-log'
import type { FromElsewhere, Unsaved } from './app'
import type { Desk, HandleWorld, KeptHandle, Sight } from './live-batch'
import { loadWriting } from './load-writing'

/** A live batch: shown at once; what changes it waits for the desk, which is fetched after the first screen. */
export function openHandle(world: HandleWorld, id: string, events: readonly Event[]): KeptHandle {
  const entryStates = signal<ReadonlyMap<string, EntryState>>(new Map())
  const unsaved = signal<readonly Unsaved[]>([])
  const sight: Sight = {
    id,
    view: signal({ state: foldBatch(events) }),
    entryStates,
    unsaved,
    fromElsewhere: signal<FromElsewhere | null>(null),
    noteStates: (ids, state) => {
      const next = new Map(entryStates.value)
      for (const entry of ids) next.set(entry, state)
      entryStates.value = next
    },
  }
  let opened: Promise<Desk> | undefined
  const desk = (): Promise<Desk> => {
    opened ??= loadWriting().then(({ openDesk }) => openDesk(world, sight))
    return opened
  }
  return {
    ...sight,
    intend: async (intention, recorded) => (await desk()).intend(intention, recorded),
    retry: async () => (await desk()).retry(),
    drop: (given) => {
      unsaved.value = unsaved.value.filter((each) => each !== given)
    },
    take: async (arrived) => (await desk()).take(arrived),
    decideHeld: async (held) => (await desk()).decideHeld(held),
  }
}
