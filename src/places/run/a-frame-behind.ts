import { batch, computed, type ReadonlySignal, signal } from '@preact/signals'
import { pause } from '../../app/pause'
import { isNarrow } from './narrow'

/**
 * Lets one part of the screen go a frame ahead of the rest: what `lag` gives stays as it was meanwhile, so that a row
 * can say *recorded* in a frame of its own, and the next step's card comes in the one after it.
 */
export interface FrameBehind {
  readonly lag: <T>(source: ReadonlySignal<T>) => ReadonlySignal<T>
  /** Does `work`, and shows the rest, once the next frame is drawn. Where no row is in sight `work` is done at once. */
  readonly after: (work: () => void) => Promise<void>
  /** Does now what waits: whatever a person does next counts after it. True where something waited. */
  readonly flush: () => boolean
}

/** A page that is hidden draws no frames, and is not to wait for one. */
const longestMs = 250
/** So long a frame stands before the next one is begun: it is on the screen by then, whatever comes after it. */
const frameMs = 16

export function createFrameBehind(): FrameBehind {
  const held = signal(false)
  let waiting: (() => void)[] = []
  const flush = (): boolean => {
    const works = waiting
    waiting = []
    if (works.length > 0)
      batch(() => {
        for (const work of works) work()
        held.value = false
      })
    return works.length > 0
  }
  return {
    flush,
    lag: (source) => {
      let last = source.peek()
      return computed(() => {
        if (!held.value) last = source.value
        return last
      })
    },
    after: async (work) => {
      if (!hasRows()) return work()
      waiting = [...waiting, work]
      held.value = true
      await Promise.race([nextFrame().then(() => pause(frameMs)), pause(longestMs)])
      flush()
    },
  }
}

const hasRows = (): boolean => typeof matchMedia !== 'undefined' && !isNarrow()

const nextFrame = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve))
