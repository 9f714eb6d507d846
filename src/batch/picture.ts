import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { base64Of, bytesOfBase64 } from './base64'
import type { Draft, Event } from './event'

/**
 * A picture is a stream of its own, named by the SHA-256 of its bytes, with one entry that holds them: so it has two
 * copies, is healed, leaves and comes back like everything else. A batch names it by that name.
 */
export interface PictureBytes {
  readonly mime: string
  readonly width: number
  readonly height: number
  readonly base64: string
}

/** How a batch names a picture. */
export interface Pictured {
  /** The SHA-256 of its bytes. */
  readonly picture: string
  readonly caption: string
  readonly step?: string
  readonly mime?: string
  readonly width?: number
  readonly height?: number
  readonly bytes?: number
}

export const pictureKind = 'bytes-kept'

export const pictureName = (bytes: Uint8Array): string => bytesToHex(sha256(bytes))

export const pictureStream = (name: string): string => `picture:${name}`

export const pictureDraft = (bytes: Uint8Array, how: Omit<PictureBytes, 'base64'>): Draft<string, PictureBytes> => ({
  kind: pictureKind,
  body: { ...how, base64: base64Of(bytes) },
})

/** True where the text is of the bytes that the stream is named by. */
export function isOfPicture(base64: string, stream: string): boolean {
  const bytes = bytesOfBase64(base64)
  return bytes !== null && pictureStream(pictureName(bytes)) === stream
}

/** The picture that a stream's entries hold; null where they hold none, or another one. */
export function pictureIn(events: readonly Event[]): PictureBytes | null {
  for (const { kind, body, stream } of events) {
    // Bodies are checked where entries come in from outside.
    if (kind === pictureKind && isOfPicture((body as PictureBytes).base64, stream)) return body as PictureBytes
  }
  return null
}
