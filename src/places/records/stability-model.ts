import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import { type Stability, stabilityOf } from '../../batch/stability'
import { type Course, coursesOf } from '../../batch/stability-trend'
import type { BatchState } from '../../batch/state'
import { studentQuantile } from '../../trade/quantile'

export interface StabilityModel {
  readonly sight: ReadonlySignal<'reading' | 'missing' | 'here'>
  readonly state: ReadonlySignal<BatchState | null>
  /** Null where nothing was planned yet. */
  readonly stability: ReadonlySignal<Stability | null>
  readonly courses: ReadonlySignal<readonly Course[]>
  readonly write: (intention: Intention) => Promise<Refusal | null>
  readonly open: () => Promise<void>
}

/** The kept jars of one batch, in step with its log. */
export function createStabilityModel(app: Pick<App, 'batches'>, batch: string): StabilityModel {
  const handle = signal<BatchHandle | null>(null)
  const read = signal(false)
  const state = computed(() => handle.value?.view.value.state ?? null)
  const stability = computed(() => (state.value === null ? null : stabilityOf(state.value)))
  return {
    sight: computed(() => (state.value ? 'here' : read.value ? 'missing' : 'reading')),
    state,
    stability,
    courses: computed(() =>
      state.value && stability.value ? coursesOf(state.value, stability.value, studentQuantile) : [],
    ),
    write: async (intention) => {
      if (handle.value === null) return { code: 'NO_BATCH' }
      const outcome = await handle.value.intend(intention)
      return outcome.ok ? null : outcome.refusal
    },
    open: async () => {
      handle.value = await app.batches.open(batch)
      read.value = true
    },
  }
}
