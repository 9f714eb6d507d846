import type { PictureRefusal, Pictures, SmallPicture } from '../../ports/pictures'
import { accept, type Result, refuse } from '../../trade/result'

const largestFileBytes = 60 * 1024 * 1024
const longestSide = 1600
const wantedBytes = 220_000

/** From fine to coarse: quality, and the share of the longest side. The first that is small enough is taken. */
const tries = [
  [0.82, 1],
  [0.7, 1],
  [0.55, 1],
  [0.55, 0.75],
  [0.5, 0.5],
] as const

/** Pictures are decoded and drawn anew by the browser: nothing but the pixels comes through. */
export const webPictures = (): Pictures => ({
  shrink: async (file) => {
    if (file.size === 0) return refuse({ code: 'PICTURE_UNREADABLE' })
    if (file.size > largestFileBytes) return refuse({ code: 'PICTURE_TOO_LARGE', bytes: file.size })
    if (file.type !== '' && !file.type.startsWith('image/')) return refuse({ code: 'PICTURE_NONE' })
    try {
      const whole = await createImageBitmap(file, { imageOrientation: 'from-image' })
      return await shrunk(whole).finally(() => whole.close())
    } catch {
      return refuse({ code: 'PICTURE_UNREADABLE' })
    }
  },
})

async function shrunk(whole: ImageBitmap): Promise<Result<SmallPicture, PictureRefusal>> {
  let smallest: SmallPicture | null = null
  for (const [quality, share] of tries) {
    const made = await encoded(whole, quality, share)
    if (made === null) continue
    smallest = made
    if (made.bytes.length <= wantedBytes) break
  }
  return smallest === null ? refuse({ code: 'PICTURE_UNREADABLE' }) : accept(smallest)
}

async function encoded(whole: ImageBitmap, quality: number, share: number): Promise<SmallPicture | null> {
  const scale = Math.min(1, (longestSide * share) / Math.max(whole.width, whole.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(whole.width * scale))
  canvas.height = Math.max(1, Math.round(whole.height * scale))
  const context = canvas.getContext('2d')
  if (context === null) return null
  // What was transparent is white on paper.
  context.fillStyle = 'white'
  context.fillRect(0, 0, canvas.width, canvas.height)
  context.drawImage(whole, 0, 0, canvas.width, canvas.height)
  const { width, height } = canvas
  for (const mime of ['image/webp', 'image/jpeg'] as const) {
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, mime, quality))
    if (blob?.type === mime) return { bytes: new Uint8Array(await blob.arrayBuffer()), mime, width, height }
  }
  return null
}
