import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import type { LastInHand } from '../../app/last-in-hand'
import { type BenchCard, benchCards } from './order'

export interface BenchModel {
  readonly cards: ReadonlySignal<readonly BenchCard[]>
  /** `unknown` until the catalogue is read; `first` before there is anything at all. */
  readonly mood: ReadonlySignal<'unknown' | 'first' | 'idle' | 'busy'>
  /** Opens the batch; what rings in it falls silent. */
  readonly goTo: (card: BenchCard) => void
  readonly dispose: () => void
}

/** Reads summaries only, never a log: the bench must show at once however many batches there are. */
export function createBenchModel(app: App): BenchModel {
  const last = signal<ReadonlyMap<string, LastInHand>>(new Map())
  const stop = effect(() => {
    const inHand = app.batches.inHand.value
    void import('../../app/last-in-hand').then(async ({ readLast }) => {
      last.value = await readLast(app.drafts, inHand)
    })
  })
  return {
    cards: computed(() => {
      const named = app.batches.inHand.value.map((batch) => {
        const next = last.value.get(batch.id)
        return next?.done === batch.done ? { ...batch, next } : batch
      })
      return benchCards(named, app.nowMs.value)
    }),
    mood: computed(() => {
      if (app.batches.inHand.value.length > 0) return 'busy'
      if (!app.catalogue.loaded.value) return 'unknown'
      return app.catalogue.formulas.value.size > 0 ? 'idle' : 'first'
    }),
    goTo: (card) => {
      app.alarm.unlock()
      const { id, next } = card.batch
      app.go({ place: 'run', batch: id, step: next?.step })
      if (card.ringing.length > 0) void silence(app, card.batch.id)
    },
    dispose: stop,
  }
}

async function silence(app: App, batch: string): Promise<void> {
  for (const bell of app.bells.ringing.value.filter((each) => each.batch === batch)) await app.bells.stop(bell)
}
