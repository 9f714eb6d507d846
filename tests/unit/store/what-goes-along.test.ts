import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { expect, it, vi } from 'vitest'
import type { Draft, Event } from '../../../src/batch/event'
import { pictureDraft, pictureName, pictureStream } from '../../../src/batch/picture'
import { seal } from '../../../src/batch/seal'
import { emptyTip } from '../../../src/batch/tip'
import { newTablet, type OpenPage, openPage, request } from './support.ts'

const madeAt = '2026-11-24T11:00:00Z'
const bytes = new Uint8Array([82, 73, 70, 70, 1, 2, 3])
const name = pictureName(bytes)
const first = (stream: string, draft: Draft): Event =>
  seal(draft, emptyTip, { stream, replica: 'r', id: `id-${stream}`, at: madeAt, by: 'person-rk' })

const pin = { salt: '0'.repeat(32), hash: 'ab'.repeat(32), iterations: 600_000 }
const events = [
  first('batch:one', { kind: 'pictured', body: { picture: name, caption: 'no lumps' } }),
  first('person:person-mo', { kind: 'pin-set', body: { pin, how: 'first' } }),
  first(pictureStream(name), pictureDraft(bytes, { mime: 'image/webp', width: 4, height: 3 })),
  first(pictureStream('0'.repeat(64)), { kind: 'of-a-newer-version', body: {} }),
]

async function tablet(): Promise<OpenPage> {
  vi.stubGlobal('indexedDB', new IDBFactory())
  const page = await openPage(newTablet())
  return page
}

async function fileOf({ store }: OpenPage, streams: readonly string[] | 'all'): Promise<Blob> {
  const answer = await (await store.archive()).write(streams, madeAt)
  if (!answer.ok) throw new Error(answer.refusal.code)
  return answer.value.file
}

it('[E87] a batch’s file has the pictures that the batch names, in both copies where it comes in, and no other', async () => {
  const page = await tablet()
  for (const event of events) await page.store.log.append(request([event]))
  const file = await fileOf(page, ['batch:one'])
  const there = await tablet()
  const archive = await there.store.archive()
  expect(await archive.apply(file)).toMatchObject({ ok: true, value: { streams: ['batch:one', pictureStream(name)] } })
  expect(await there.store.log.read(pictureStream(name))).toEqual([events[2]])
  expect(await archive.secondCopy(pictureStream(name))).toEqual([events[2]])
})

it('[E80] no PIN leaves with a batch; with everything it does', async () => {
  const page = await tablet()
  for (const event of events) await page.store.log.append(request([event]))
  expect(await (await fileOf(page, ['batch:one'])).text()).not.toContain(pin.hash)
  expect(await (await fileOf(page, 'all')).text()).toContain(pin.hash)
})
