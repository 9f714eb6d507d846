import type { Awake, AwakeState } from '../../ports/awake'

/**
 * The screen wake lock. Browsers take it back whenever the page is hidden, and when power is low:
 * it is asked for again each time the page is seen, as long as it is wanted.
 */
export const webAwake = (): Awake => {
  const listeners = new Set<(state: AwakeState) => void>()
  let wanted = false
  let lock: WakeLockSentinel | null = null

  const tell = (state: AwakeState): void => {
    for (const listener of listeners) listener(state)
  }

  const request = async (): Promise<void> => {
    if (!wanted || (lock !== null && !lock.released) || document.visibilityState === 'hidden') return
    try {
      const granted = await navigator.wakeLock.request('screen')
      if (!wanted) return void granted.release()
      lock = granted
      granted.addEventListener('release', () => {
        if (wanted) tell('lost')
      })
      tell('kept')
    } catch {
      // Low power or no permission: the next time the page is seen may do better.
      tell('lost')
    }
  }

  document.addEventListener('visibilitychange', () => void request())

  return {
    keep: () => {
      wanted = true
      // Absent in older browsers and on plain http, whatever the types say.
      if ('wakeLock' in navigator) void request()
      else tell('unavailable')
    },
    release: () => {
      wanted = false
      void lock?.release()
      lock = null
    },
    onChange: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
  }
}
