import { createBatches, type KeptBatches } from '../../src/app/batches'
import type { Writer } from '../../src/app/writer'
import type { ManualClock } from '../../src/devices/clock/manual-clock'
import { manualClock } from '../../src/devices/clock/manual-clock'
import { countingIds } from '../../src/devices/ids/counting-ids'
import { type MemoryStore, memoryStore } from '../../src/store/memory-store'
import { morningMs } from './batch'

/** One page over the in-memory twin of the store, with a clock that only moves when told to. */
export interface World {
  readonly store: MemoryStore
  readonly clock: ManualClock
  readonly writer: Writer
  readonly batches: KeptBatches
}

export function openWorld(): World {
  const store = memoryStore('tablet')
  const clock = manualClock(morningMs, 60)
  const writer: Writer = { replica: () => store.log.replica, clock, ids: countingIds() }
  return { store, clock, writer, batches: createBatches({ log: store.log, writer }) }
}
