import type { Awake, AwakeState } from '../../ports/awake'

export interface SimulatedAwake extends Awake {
  readonly wanted: boolean
  /** The system takes the screen back. */
  lose(): void
}

/** A screen that stays on when asked, until `lose`. Where `available` is false it never does. */
export const simulatedAwake = (available = true): SimulatedAwake => {
  const listeners = new Set<(state: AwakeState) => void>()
  let wanted = false
  const tell = (state: AwakeState): void => {
    for (const listener of listeners) listener(state)
  }
  return {
    keep: () => {
      wanted = true
      tell(available ? 'kept' : 'unavailable')
    },
    release: () => {
      wanted = false
    },
    onChange: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
    get wanted() {
      return wanted
    },
    lose: () => {
      if (wanted) tell('lost')
    },
  }
}
