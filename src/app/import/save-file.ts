import { type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../app'
import type { Refusal } from '../refusals'

/** Saving entries as a file: written, then handed to the person. */
export type SaveState =
  | { readonly step: 'idle' | 'writing' | 'saved' }
  /** The file stands ready, but the browser wants a fresh tap for it. */
  | { readonly step: 'ready' }
  | { readonly step: 'failed'; readonly refusal: Refusal }

export interface Saver {
  readonly state: ReadonlySignal<SaveState>
  readonly save: (streams: readonly string[] | 'all', name: string) => Promise<void>
  /** Hands the file that stands ready on, in the tap. */
  readonly handOn: () => Promise<void>
}

/** A file of everything counts as a backup, and its moment is kept. */
export function createSaver(app: App): Saver {
  const state = signal<SaveState>({ step: 'idle' })
  let ready: { readonly name: string; readonly blob: Blob; readonly all: boolean } | null = null

  const handOn = async (): Promise<void> => {
    if (ready === null) return
    const file = ready
    const saved = await app.share.saveFile(file.name, 'application/x-ndjson', file.blob)
    if (!saved.ok) {
      state.value =
        saved.refusal.code === 'SHARE_NEEDS_TAP' ? { step: 'ready' } : { step: 'failed', refusal: saved.refusal }
      return
    }
    if (saved.value === 'dismissed') {
      state.value = { step: 'ready' }
      return
    }
    ready = null
    state.value = { step: 'saved' }
    if (file.all) await app.settings.change({ lastBackupAt: new Date(app.clock.nowMs()).toISOString() })
  }

  return {
    state,
    handOn,
    save: async (streams, name) => {
      if (state.value.step === 'writing') return
      state.value = { step: 'writing' }
      try {
        const archive = await app.archive()
        const blob = await archive.write(streams, new Date(app.clock.nowMs()).toISOString())
        ready = { name, blob, all: streams === 'all' }
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
