import type { Alarm, AlarmState } from '../../ports/alarm'

export interface SilentAlarm extends Alarm {
  /** What rings now, in the order in which it began. */
  readonly ringing: readonly string[]
  readonly tests: number
}

/** A bell that only remembers. Where `sounds` is false, unlocking finds it broken. */
export const silentAlarm = (sounds = true): SilentAlarm => {
  const listeners = new Set<(state: AlarmState) => void>()
  const ringing = new Set<string>()
  let state: AlarmState = 'locked'
  let tests = 0
  return {
    unlock: () => {
      if (state !== 'locked') return
      state = sounds ? 'ready' : 'broken'
      for (const listener of listeners) listener(state)
    },
    ring: (id) => void ringing.add(id),
    stop: (id) => void ringing.delete(id),
    test: () => {
      tests += 1
    },
    get state() {
      return state
    },
    get ringing() {
      return [...ringing]
    },
    get tests() {
      return tests
    },
    onChange: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
  }
}
