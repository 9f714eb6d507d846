import type { Result } from '../trade/result'

/** Makes a picture from a camera or a file small enough to be kept. */
export interface Pictures {
  /** The longest side is 1600 px, about 200 kB; what a camera writes beside the picture (place, time) is gone. */
  shrink(file: Blob): Promise<Result<SmallPicture, PictureRefusal>>
}

export interface SmallPicture {
  readonly bytes: Uint8Array
  readonly mime: 'image/webp' | 'image/jpeg'
  readonly width: number
  readonly height: number
}

export type PictureRefusal =
  | { readonly code: 'PICTURE_NONE' }
  | { readonly code: 'PICTURE_UNREADABLE' }
  | { readonly code: 'PICTURE_TOO_LARGE'; readonly bytes: number }
