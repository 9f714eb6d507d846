import { type ReadonlySignal, signal } from '@preact/signals'

/** Whether something is being written. One thing at a time: who finds it busy leaves it. */
export interface Busy {
  readonly now: () => boolean
  /** True once it takes long enough to be noticed: a word that comes and goes at once says nothing, and costs a frame. */
  readonly shown: ReadonlySignal<boolean>
  readonly begin: () => void
  readonly end: () => void
}

const noticedAfterMs = 100

export function createBusy(): Busy {
  const shown = signal(false)
  let now = false
  let waiting: ReturnType<typeof setTimeout> | undefined
  return {
    now: () => now,
    shown,
    begin: () => {
      now = true
      clearTimeout(waiting)
      waiting = setTimeout(() => {
        shown.value = true
      }, noticedAfterMs)
    },
    end: () => {
      now = false
      clearTimeout(waiting)
      shown.value = false
    },
  }
}
