import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App, BatchHandle } from '../../app/app'
import { createSaver, type Saver } from '../../app/import/save-file'
import type { Refusal } from '../../app/refusals'
import type { Intention } from '../../batch/intention'
import { type LabelDraft, labelOf, portionsAsMade } from '../../batch/label-draft'
import { type BatchRecord, recordOf } from '../../batch/record'
import type { BatchState } from '../../batch/state'

export interface RecordModel {
  /** `reading` until the log is folded; `missing` where there is no such batch. */
  readonly state: ReadonlySignal<'reading' | 'missing' | 'here'>
  readonly record: ReadonlySignal<BatchRecord | null>
  readonly batch: ReadonlySignal<BatchState | null>
  /** What was made, as a label would list it. */
  readonly label: ReadonlySignal<LabelDraft | null>
  readonly saver: Saver
  readonly save: () => void
  /** Writes to the batch's log; null when it is durable. */
  readonly write: (intention: Intention) => Promise<Refusal | null>
  readonly open: () => Promise<void>
}

/** One batch's record, kept in step with its log. */
export function createRecordModel(app: App, batchId: string): RecordModel {
  const handle = signal<BatchHandle | null>(null)
  const read = signal(false)
  const saver = createSaver(app)
  return {
    state: computed(() => (handle.value ? 'here' : read.value ? 'missing' : 'reading')),
    batch: computed(() => handle.value?.view.value.state ?? null),
    record: computed(() => {
      if (handle.value === null) return null
      return recordOf(handle.value.view.value.state, app.catalogue.people.value, app.catalogue.lots.value)
    }),
    label: computed(() => {
      const state = handle.value?.view.value.state
      return state ? labelOf(portionsAsMade(state, app.catalogue.materials.value), state.header.contact) : null
    }),
    saver,
    save: () => {
      const { code } = handle.value?.view.value.state.header ?? { code: batchId }
      void saver.save([`batch:${batchId}`], `${fileNameOf(code)}.ndjson`)
    },
    write: async (intention) => {
      if (handle.value === null) return { code: 'NO_BATCH' }
      const outcome = await handle.value.intend(intention)
      return outcome.ok ? null : outcome.refusal
    },
    open: async () => {
      handle.value = await app.batches.open(batchId)
      read.value = true
    },
  }
}

/** A code as a file name that every system takes. */
export const fileNameOf = (code: string): string => code.replace(/[^\p{L}\p{N}._-]+/gu, '-')
