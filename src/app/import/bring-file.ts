import { type ReadonlySignal, signal } from '@preact/signals'
import type { ArchivePreview, ArchiveRefusal } from '../../ports/archive'
import type { App } from '../app'
import { type SignedPreview, signedPreview } from '../sign/signed-preview'
import { byPercent } from './by-percent'
import { type ImportRefusal, type ImportReport, importDocuments } from './import-documents'
import { type MeetingRow, meetingRows } from './preview-words'

/** Bringing in a file, step by step. Nothing is changed before `apply`. */
export type BringState =
  | { readonly step: 'idle' }
  | { readonly step: 'reading' | 'applying'; readonly name: string; readonly fraction: number }
  | {
      readonly step: 'preview'
      readonly name: string
      readonly preview: ArchivePreview
      readonly meetings: readonly MeetingRow[]
      readonly signed: SignedPreview
    }
  | { readonly step: 'done'; readonly name: string; readonly preview: ArchivePreview }
  | { readonly step: 'documents'; readonly name: string; readonly report: ImportReport }
  | { readonly step: 'refused'; readonly name: string; readonly refusal: ArchiveRefusal | ImportRefusal }

export interface Bring {
  readonly state: ReadonlySignal<BringState>
  /** Reads and verifies the whole file. A file of catalogue documents is checked whole and comes in at once. */
  readonly take: (file: File) => Promise<void>
  readonly apply: () => Promise<void>
  /** Ends the reading, or the bringing in after what is being written; what is in stays in. */
  readonly stop: () => void
  readonly leave: () => void
}

export function createBring(app: App): Bring {
  const state = signal<BringState>({ step: 'idle' })
  let file: File | null = null
  let stopping = new AbortController()

  const takeDocuments = async (taken: File): Promise<void> => {
    const answer = await importDocuments(app, taken)
    const { name } = taken
    state.value = answer.ok
      ? { step: 'documents', name, report: answer.value }
      : { step: 'refused', name, refusal: answer.refusal }
  }

  const watching = (step: 'reading' | 'applying', name: string) => {
    stopping = new AbortController()
    state.value = { step, name, fraction: 0 }
    return {
      signal: stopping.signal,
      onProgress: byPercent((fraction) => {
        state.value = { step, name, fraction }
      }),
    }
  }

  return {
    state,
    take: async (taken) => {
      const { name } = taken
      const watch = watching('reading', name)
      if (await isCatalogue(taken)) return takeDocuments(taken)
      const archive = await app.archive()
      const found = await archive.inspect(taken, watch)
      file = found.ok ? taken : null
      state.value = found.ok
        ? {
            step: 'preview',
            name,
            preview: found.value,
            meetings: await meetingRows(app.log, found.value.meetings),
            signed: await signedPreview(app, found.value.signed),
          }
        : { step: 'refused', name, refusal: found.refusal }
    },
    apply: async () => {
      if (file === null) return
      const { name } = file
      const watch = watching('applying', name)
      const archive = await app.archive()
      const done = await archive.apply(file, watch)
      file = null
      state.value = done.ok
        ? { step: 'done', name, preview: done.value }
        : { step: 'refused', name, refusal: done.refusal }
    },
    stop: () => stopping.abort(),
    leave: () => {
      file = null
      state.value = { step: 'idle' }
    },
  }
}

/** An archive says its format in its first line; a catalogue file says another one near its beginning. */
async function isCatalogue(file: Blob): Promise<boolean> {
  const beginning = await file.slice(0, 2000).text()
  return /"format"\s*:\s*"pannikin-(catalogue|formulas)"/.test(beginning)
}
