import { whenIdle } from '../../app/after-paint'
import type { App } from '../../app/app'
import type { BatchState } from '../../batch/state'

const keyOf = (batchId: string): string => `in-hand:${batchId}`

/** The step that was last in hand: where a new start of the tablet, or a way round by another batch, comes back to. */
export const keptStep = (drafts: App['drafts'], batchId: string): Promise<string | null> =>
  drafts.read(keyOf(batchId)).catch(() => null)

interface KeepingPlace {
  readonly moveTo: (step: string | null) => void
  /** Keeps at once what still waits: the run is left, and the bench names the step next. */
  readonly flush: () => void
}

/** Keeps the step in hand, and what the bench says of it, when nothing more pressing waits. */
export function keepingPlace(app: App, batchId: string, stateNow: () => BatchState): KeepingPlace {
  let waiting: { readonly step: string | null } | null = null
  const flush = () => {
    if (waiting === null) return
    const { step } = waiting
    waiting = null
    void app.drafts.write(keyOf(batchId), step)
    if (step === null) return
    const state = stateNow()
    void import('../../app/last-in-hand').then(({ keepLast }) => keepLast(app.drafts, state, step))
  }
  return {
    moveTo: (step) => {
      const mine = { step }
      waiting = mine
      void whenIdle().then(() => {
        if (waiting === mine) flush()
      })
    },
    flush,
  }
}
