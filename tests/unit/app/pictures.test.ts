import { createHash } from 'node:crypto'
import { beforeEach, describe, expect, test } from 'vitest'
import type { App } from '../../../src/app/app'
import type { KeptHandle } from '../../../src/app/live-batch'
import { keepPicture, pictureSentence } from '../../../src/app/pictures/keep-picture'
import { base64Of, bytesOfBase64 } from '../../../src/batch/base64'
import { pictureIn, pictureStream } from '../../../src/batch/picture'
import { recordOf } from '../../../src/batch/record'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { plainPictures } from '../../../src/devices/pictures/plain-pictures'
import type { SmallPicture } from '../../../src/ports/pictures'
import { openWorld, type World } from '../../support/app-world'
import { lotionHeader } from '../../support/formulas'
import { signWorld } from '../../support/sign-world'

let world: World
let app: App
let handle: KeptHandle
const picture: SmallPicture = { bytes: new Uint8Array([1, 2, 3, 250]), mime: 'image/webp', width: 4, height: 3 }
const name = createHash('sha256').update(picture.bytes).digest('hex')

beforeEach(async () => {
  const signing = signWorld(openWorld())
  world = signing.world
  app = signing.app as App
  await world.batches.start({ do: 'open', header: lotionHeader(), preflight: [] }, [])
  handle = (await world.batches.open('one')) as KeptHandle
})

describe('a picture', () => {
  test('[E87] is kept as bytes under their own name, and the batch names it with its step', async () => {
    expect(await keepPicture(app, handle, picture, { caption: 'no lumps', step: 'a-water' })).toBeNull()
    const stored = await world.store.log.read(pictureStream(name))
    expect(stored.map(faultInBody)).toEqual([null])
    expect(bytesOfBase64(pictureIn(stored)?.base64 ?? '')).toEqual(picture.bytes)
    const { pictures, trail } = recordOf(handle.view.value.state)
    expect(pictures).toMatchObject([{ picture: name, caption: 'no lumps', step: 'a-water', by: 'RK' }])
    expect(trail.at(-1)?.event.body).toMatchObject({ mime: 'image/webp', width: 4, height: 3, bytes: 4 })
    await keepPicture(app, handle, picture, { caption: 'the same' })
    expect(await world.store.log.read(pictureStream(name))).toHaveLength(1)
  })

  test('[E87] that does not fit is said, and the batch says nothing of it', async () => {
    world.store.setMood('full')
    expect(await keepPicture(app, handle, picture, { caption: '' })).toEqual({ code: 'STORAGE_FULL' })
    world.store.setMood('well')
    expect(recordOf(handle.view.value.state).pictures).toEqual([])
    expect(handle.unsaved.value).toEqual([])
  })

  test('[E87] whose bytes are others than its name says is none', async () => {
    await keepPicture(app, handle, picture, { caption: '' })
    const [stored] = await world.store.log.read(pictureStream(name))
    if (!stored) throw new Error('not kept')
    const forged = { ...stored, body: { ...(stored.body as object), base64: base64Of(new Uint8Array([9])) } }
    expect(faultInBody(forged)).toBe('body.base64')
    expect(pictureIn([forged])).toBeNull()
    expect(faultInBody({ ...stored, body: { ...(stored.body as object), mime: 'text/html' } })).not.toBeNull()
  })

  test('[E87] is a picture: anything else gets its own sentence', async () => {
    const { shrink } = plainPictures()
    const codeOf = async (file: Blob) => {
      const answer = await shrink(file)
      return answer.ok ? '' : pictureSentence(answer.refusal)
    }
    expect(await codeOf(new Blob(['code;name'], { type: 'text/csv' }))).toMatch(/is no picture/)
    expect(await codeOf(new Blob([], { type: 'image/png' }))).toMatch(/cannot read that picture/)
    expect(pictureSentence({ code: 'PICTURE_TOO_LARGE', bytes: 61e6 })).toMatch(/61 MB/)
  })
})

describe('bytes as text', () => {
  test('[E87] are those of RFC 4648, and come back', () => {
    const vectors = {
      '': '',
      f: 'Zg==',
      fo: 'Zm8=',
      foo: 'Zm9v',
      foob: 'Zm9vYg==',
      fooba: 'Zm9vYmE=',
      foobar: 'Zm9vYmFy',
    }
    for (const [plain, text] of Object.entries(vectors)) {
      expect(base64Of(new TextEncoder().encode(plain))).toBe(text)
      expect(new TextDecoder().decode(bytesOfBase64(text) ?? new Uint8Array([1]))).toBe(plain)
    }
    const all = Uint8Array.from({ length: 256 }, (_, at) => at)
    expect(base64Of(all)).toBe(Buffer.from(all).toString('base64'))
    expect(bytesOfBase64(base64Of(all))).toEqual(all)
    for (const bad of ['Zg', 'Z===', 'Zg=g', 'Z g=']) expect(bytesOfBase64(bad)).toBeNull()
  })
})
