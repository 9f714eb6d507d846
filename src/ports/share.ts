import type { Result } from '../trade/result'

/** Hands a file to the person: by the share sheet where downloads trap the app, else as a download. */
export interface Share {
  /** Call it in the tap, with the bytes ready: share sheets refuse a tap that is seconds old. */
  saveFile(name: string, mime: string, content: FileContent): Promise<Result<Saved, ShareRefusal>>
}

export type FileContent = Blob | Uint8Array<ArrayBuffer> | ReadableStream<Uint8Array<ArrayBuffer>>

/** `dismissed`: the person closed the share sheet; nothing left the tablet. */
export type Saved = 'shared' | 'downloading' | 'dismissed'

/** `SHARE_NEEDS_TAP`: the file is ready, but the browser wants a fresh tap for it. */
export type ShareRefusal = { readonly code: 'SHARE_NEEDS_TAP' } | { readonly code: 'SHARE_FAILED' }
