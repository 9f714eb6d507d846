import type { Alarm, AlarmState } from '../../ports/alarm'

export interface LateAlarm extends Alarm {
  /** Fetches the works, if they are not here yet. */
  readonly load: () => void
}

/** A bell whose works are fetched after the first screen. What rings before they are there begins when they come. */
export const lateAlarm = (fetchWorks: () => Promise<Alarm>): LateAlarm => {
  const listeners = new Set<(state: AlarmState) => void>()
  const waiting = new Set<string>()
  let asked = false
  let tapped = false
  let alarm: Alarm | null = null

  const begin = (works: Alarm): void => {
    alarm = works
    works.onChange((state) => {
      for (const listener of listeners) listener(state)
    })
    // Enough where a page keeps its first tap for good; elsewhere the next tap unlocks it.
    if (tapped) works.unlock()
    for (const id of waiting) works.ring(id)
  }
  const load = (): void => {
    if (asked) return
    asked = true
    void fetchWorks().then(begin)
  }

  return {
    load,
    unlock: () => {
      tapped = true
      load()
      alarm?.unlock()
    },
    ring: (id) => {
      load()
      if (alarm === null) waiting.add(id)
      else alarm.ring(id)
    },
    stop: (id) => {
      waiting.delete(id)
      alarm?.stop(id)
    },
    test: () => alarm?.test(),
    get state() {
      return alarm?.state ?? 'locked'
    },
    onChange: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
  }
}
