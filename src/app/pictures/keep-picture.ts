import { pictureDraft, pictureName, pictureStream } from '../../batch/picture'
import type { PictureRefusal, SmallPicture } from '../../ports/pictures'
import type { App, BatchHandle } from '../app'
import { appendTo } from '../append-to'
import { projectStream } from '../project'
import { type Refusal, sentenceOf } from '../refusals'
import { type SentencesOf, sayFrom } from '../refusals/sentences'

type KeepingWorld = Pick<App, 'log' | 'clock' | 'ids' | 'settings'>

/** Keeps the bytes first, then names them in the batch: with storage full the batch says nothing of a picture. */
export async function keepPicture(
  world: KeepingWorld,
  handle: Pick<BatchHandle, 'intend'>,
  picture: SmallPicture,
  { caption, step }: { readonly caption: string; readonly step?: string | undefined },
): Promise<Refusal | null> {
  const { bytes, mime, width, height } = picture
  const name = pictureName(bytes)
  const unkept = await keepBytes(world, name, picture)
  if (unkept) return unkept
  const body = { picture: name, caption, mime, width, height, bytes: bytes.length }
  const outcome = await handle.intend({ do: 'picture', picture: step === undefined ? body : { ...body, step } })
  return outcome.ok ? null : outcome.refusal
}

async function keepBytes(world: KeepingWorld, name: string, picture: SmallPicture): Promise<Refusal | null> {
  const { log, clock, ids, settings } = world
  const stream = pictureStream(name)
  // The same picture twice is kept once.
  if (await log.head(stream)) return null
  const writer = { replica: () => log.replica, clock, ids }
  const by = () => settings.value.value.person || 'nobody'
  const { bytes, mime, width, height } = picture
  const draft = pictureDraft(bytes, { mime, width, height })
  return appendTo({ log, writer, by }, stream, draft, (events) => projectStream(stream, events))
}

const pictureSentences: SentencesOf<PictureRefusal> = {
  PICTURE_NONE: () => 'That file is no picture. Choose a photograph or an image file.',
  PICTURE_UNREADABLE: () =>
    'This browser cannot read that picture: it is damaged, or of a kind it does not know. Try JPEG or PNG.',
  PICTURE_TOO_LARGE: ({ bytes }) => `The file is ${Math.ceil(bytes / 1e6)} MB. Choose a picture of at most 60 MB.`,
}

export const pictureSentence = (refusal: PictureRefusal | Refusal): string =>
  isOfPictures(refusal) ? sayFrom<PictureRefusal>(pictureSentences, refusal) : sentenceOf(refusal)

const isOfPictures = (refusal: PictureRefusal | Refusal): refusal is PictureRefusal =>
  Object.hasOwn(pictureSentences, refusal.code)
