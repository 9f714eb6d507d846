import type { Event } from '../../src/batch/event'
import { isoOf } from '../../src/batch/iso-of'
import { pictureDraft, pictureName, pictureStream } from '../../src/batch/picture'
import { seal } from '../../src/batch/seal'
import { emptyTip } from '../../src/batch/tip'
import type { Bench } from '../house/demonstration/bench'
import { pngOf } from './png'

/** The stream of a picture, as it goes into a file beside its batch. */
export interface PictureLog {
  readonly state: { readonly stream: string }
  readonly events: readonly Event[]
  readonly nowMs: number
}

/** Puts a picture into a batch's record: a slope of greys with a frame, so that a cut edge can be seen. */
export function takePicture(bench: Bench, caption: string, width: number, height: number): PictureLog {
  const bytes = pngOf(width, height, (x, y) =>
    Math.min(x, y, width - 1 - x, height - 1 - y) < 12 ? 0 : 90 + ((x + y + caption.length) % 140),
  )
  const stream = pictureStream(pictureName(bytes))
  const how = { mime: 'image/png', width, height }
  const place = { stream, replica: 'demonstration', id: stream, at: isoOf(bench.nowMs, 0), by: bench.by }
  const picture = { ...how, picture: pictureName(bytes), caption, bytes: bytes.length }
  bench.intend({ do: 'picture', picture })
  return { state: { stream }, events: [seal(pictureDraft(bytes, how), emptyTip, place)], nowMs: bench.nowMs }
}
