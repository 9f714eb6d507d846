import { signal } from '@preact/signals'
import type { PinsWorld } from '../../src/app/sign/pins'
import { quickSlowHash } from '../../src/devices/slow-hash/quick-slow-hash'
import { openWorld, type World } from './app-world'

/** What signing needs of the app, over the in-memory twins; RK is at the tablet. */
export function signWorld(world: World = openWorld()): { world: World; app: PinsWorld } {
  const { store, clock, writer } = world
  const slowHash = quickSlowHash()
  const app = {
    log: store.log,
    drafts: store.drafts,
    clock,
    ids: writer.ids,
    slowHash: async () => slowHash,
    settings: { value: signal({ person: 'person-rk' }) },
  }
  // The settings that signing reads.
  return { world, app: app as unknown as PinsWorld }
}
