import type { StorageState } from '../ports/event-log'
import { listeners } from './listeners'

export interface StateHolder {
  get(): StorageState
  set(change: Partial<StorageState>): void
  onChange(listener: (state: StorageState) => void): () => void
  /** Asks the browser how much is used and may be. */
  measure(): Promise<void>
  /** Asks the browser not to clear this origin when space is short. */
  persist(): Promise<void>
}

export function storageState(): StateHolder {
  const changed = listeners<[StorageState]>()
  let state: StorageState = {
    database: 'dead',
    journal: 'dead',
    persisted: false,
    usedBytes: null,
    quotaBytes: null,
    compared: false,
  }
  const set = (change: Partial<StorageState>) => {
    state = { ...state, ...change }
    changed.tell(state)
  }
  // Absent in pages that are not served securely, whatever the types say.
  const storage = (): StorageManager | undefined => globalThis.navigator?.storage
  return {
    get: () => state,
    set,
    onChange: changed.add,
    async measure() {
      const { usage, quota } =
        (await storage()
          ?.estimate?.()
          .catch(() => undefined)) ?? {}
      set({ usedBytes: usage ?? null, quotaBytes: quota ?? null })
    },
    async persist() {
      const persisted =
        (await storage()
          ?.persisted?.()
          .catch(() => false)) ||
        (await storage()
          ?.persist?.()
          .catch(() => false))
      set({ persisted: persisted ?? false })
    },
  }
}
