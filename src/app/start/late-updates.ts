import { effect, signal } from '@preact/signals'
import type { UpdateModel } from '../app'
import { buildId } from './build-id'

interface LateUpdates extends UpdateModel {
  /** Fetches the watch, and begins it. */
  readonly load: () => void
}

/** The watch for a new version, begun when the first screen stands: until then none is offered. */
export const lateUpdates = (fetchWatch: () => Promise<UpdateModel>): LateUpdates => {
  const waiting = signal(false)
  let watch: UpdateModel | null = null
  return {
    waiting,
    takeOver: () => watch?.takeOver(),
    buildId,
    load: () =>
      void fetchWatch().then((begun) => {
        watch = begun
        effect(() => {
          waiting.value = begun.waiting.value
        })
      }),
  }
}
