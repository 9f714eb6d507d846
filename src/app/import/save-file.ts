import { type ReadonlySignal, signal } from '@preact/signals'
import type { WrittenArchive } from '../../ports/archive'
import type { App } from '../app'
import { countEntries } from '../backup/count-entries'
import type { Refusal } from '../refusals'
import { byPercent } from './by-percent'

/** Saving entries as a file: written, read back, then handed to the person. */
export type SaveState =
  | { readonly step: 'idle' }
  | { readonly step: 'writing'; readonly fraction: number }
  /** `ready`: the file stands ready, but the browser wants a fresh tap for it. */
  | { readonly step: 'ready' | 'saved'; readonly written: WrittenArchive }
  | { readonly step: 'failed'; readonly refusal: Refusal }

export interface Saver {
  readonly state: ReadonlySignal<SaveState>
  readonly save: (streams: readonly string[] | 'all', name: string) => Promise<void>
  readonly stop: () => void
  /** Hands the file that stands ready on, in the tap. */
  readonly handOn: () => Promise<void>
}

interface Ready {
  readonly name: string
  readonly written: WrittenArchive
  /** How many entries there were when a file of everything was begun. */
  readonly allOf: number | null
}

/** A file of everything counts as a backup, and its moment is kept. */
export function createSaver(app: App): Saver {
  const state = signal<SaveState>({ step: 'idle' })
  let ready: Ready | null = null
  let stopping = new AbortController()

  const handOn = async (): Promise<void> => {
    if (ready === null) return
    const { name, written, allOf } = ready
    const saved = await app.share.saveFile(name, 'application/x-ndjson', written.file)
    if (!saved.ok) {
      state.value =
        saved.refusal.code === 'SHARE_NEEDS_TAP'
          ? { step: 'ready', written }
          : { step: 'failed', refusal: saved.refusal }
      return
    }
    if (saved.value === 'dismissed') {
      state.value = { step: 'ready', written }
      return
    }
    ready = null
    state.value = { step: 'saved', written }
    if (allOf === null) return
    await app.settings.change({
      lastBackupAt: new Date(app.clock.nowMs()).toISOString(),
      lastBackupEntries: allOf,
      lastBackupBatches: written.batches,
    })
  }

  return {
    state,
    handOn,
    stop: () => stopping.abort(),
    save: async (streams, name) => {
      if (state.value.step === 'writing') return
      state.value = { step: 'writing', fraction: 0 }
      stopping = new AbortController()
      try {
        const allOf = streams === 'all' ? await countEntries(app.log) : null
        const archive = await app.archive()
        const written = await archive.write(streams, new Date(app.clock.nowMs()).toISOString(), {
          signal: stopping.signal,
          onProgress: byPercent((fraction) => {
            state.value = { step: 'writing', fraction }
          }),
        })
        if (!written.ok) {
          state.value =
            written.refusal.code === 'STOPPED' ? { step: 'idle' } : { step: 'failed', refusal: written.refusal }
          return
        }
        ready = { name, written: written.value, allOf }
      } catch {
        state.value = { step: 'failed', refusal: { code: 'STORAGE_REFUSED' } }
        return
      }
      await handOn()
    },
  }
}

/** A file name that says what is in it and sorts by day. */
export const everythingName = (nowMs: number): string =>
  `pannikin-everything-${new Date(nowMs).toISOString().slice(0, 10)}.ndjson`
