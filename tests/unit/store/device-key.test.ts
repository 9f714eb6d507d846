import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, expect, it, vi } from 'vitest'
import { type SigningWorld, signEnd } from '../../../src/app/sign/sign-head'
import { type DeviceSigned, keyIdOf, signedText } from '../../../src/batch/device-signature'
import { keyIn, keyStream } from '../../../src/batch/key-trail'
import { manualClock } from '../../../src/devices/clock/manual-clock'
import { webDeviceKeys } from '../../../src/devices/device-keys/web-device-keys'
import { countingIds } from '../../../src/devices/ids/counting-ids'
import type { DeviceKeys } from '../../../src/ports/device-keys'
import { newTablet, type OpenPage, openPage, type Tablet } from './support.ts'

let tablet: Tablet

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  tablet = newTablet()
})

const keysOf = async ({ store }: OpenPage): Promise<DeviceKeys> => webDeviceKeys((await store.copies).keyShelf)

/** Ids and moments of one tablet go on over its pages. */
const clock = manualClock(Date.parse('2026-11-24T10:00:00Z'), 60)
const ids = countingIds()

const end = { stream: 'batch:one', head: 'ab'.repeat(32), by: 'person-rk' }

async function sign(page: OpenPage): Promise<DeviceSigned> {
  const { log } = page.store
  const writer = { replica: () => log.replica, clock, ids }
  const world: SigningWorld = { log, writer, deviceKeys: () => keysOf(page) }
  const signed = await signEnd(world, end)
  if (signed === null) throw new Error('not signed')
  return signed
}

const text = signedText(end.stream, end.head)

it('[E90] a key is made once, signs over restarts, and nobody takes its private half out', async () => {
  const first = await openPage(tablet)
  const one = await sign(first)
  first.kill()
  const page = await openPage(tablet)
  const two = await sign(page)
  expect(two.publicKey).toBe(one.publicKey)
  expect(keyIdOf(one.publicKey)).toBe(one.key)
  const kept = await (await page.store.copies).keyShelf.read()
  expect(kept?.privateKey).toMatchObject({ extractable: false, usages: ['sign'] })
  await expect(crypto.subtle.exportKey('pkcs8', kept?.privateKey as CryptoKey)).rejects.toThrow()
  const keys = await keysOf(page)
  for (const { publicKey, signature } of [one, two]) expect(await keys.verify(publicKey, text, signature)).toBe(true)
})

it('[E90] the private half is in no journal and no file; a file that comes in leaves it where it is', async () => {
  const page = await openPage(tablet)
  const { key, publicKey } = await sign(page)
  const archive = await page.store.archive()
  const answer = await archive.write('all', '2026-11-24T11:00:00Z')
  if (!answer.ok) throw new Error(answer.refusal.code)
  const lines = (await answer.value.file.text()).trim().split('\n').slice(1)
  const journal = [...tablet.folder.files.values()].map((bytes) => new TextDecoder().decode(bytes)).join('\n')
  for (const each of [lines.join('\n'), journal]) {
    expect(each).toContain(publicKey)
    expect(each).not.toMatch(/privateKey|"d":/)
  }
  expect(lines.map((line) => JSON.parse(line).kind)).toEqual(['key-made'])

  vi.stubGlobal('indexedDB', new IDBFactory())
  const there = await openPage(newTablet())
  const own = await sign(there)
  const replica = there.store.log.replica
  await (await there.store.archive()).apply(answer.value.file)
  expect(there.store.log.replica).not.toBe(replica)
  expect((await sign(there)).key).toBe(own.key)
  expect(keyIn(keyStream(key), await there.store.log.read(keyStream(key)))?.lost).toBeUndefined()
})

it('[E92] a key that went with the database is made anew, the journal tells it, and the old signature verifies', async () => {
  const first = await openPage(tablet)
  const old = await sign(first)
  first.kill()
  vi.stubGlobal('indexedDB', new IDBFactory())
  const page = await openPage(tablet)
  const now = await sign(page)
  expect(now.key).not.toBe(old.key)
  const trail = await page.store.log.read(keyStream(old.key))
  expect(keyIn(keyStream(old.key), trail)).toMatchObject({ lost: { why: 'missing', instead: now.key } })
  const keys = await keysOf(page)
  expect(await keys.verify(old.publicKey, text, old.signature)).toBe(true)
  expect(await keys.verify(now.publicKey, text, old.signature)).toBe(false)
  expect(await keys.verify(old.publicKey, `${text} `, old.signature)).toBe(false)
})

it('[E92] what stands in the place of the key and signs nothing is told to be unusable', async () => {
  const page = await openPage(tablet)
  const old = await sign(page)
  const { keyShelf } = await page.store.copies
  const pair = await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-384' }, false, ['sign', 'verify'])
  // A public key signs nothing.
  await keyShelf.keep({ publicKey: old.publicKey, privateKey: pair.publicKey })
  const now = await sign(page)
  expect(now.key).not.toBe(old.key)
  const trail = await page.store.log.read(keyStream(old.key))
  expect(keyIn(keyStream(old.key), trail)).toMatchObject({ lost: { why: 'unusable', instead: now.key } })
})

it('[E91] without a secure context nothing is signed, and nothing made', async () => {
  const page = await openPage(tablet)
  vi.stubGlobal('crypto', { subtle: undefined })
  await expect(sign(page)).rejects.toThrow('not signed')
  vi.unstubAllGlobals()
  expect(await page.store.log.heads({ family: 'device' })).toEqual([])
})

it('[E93] texts that are no key or no signature verify as nothing', async () => {
  const page = await openPage(tablet)
  const { publicKey, signature } = await sign(page)
  const keys = await keysOf(page)
  for (const [key, given] of [
    ['?', signature],
    ['AAAA', signature],
    [publicKey, '?'],
    [publicKey, 'AAAA'],
    [publicKey, ''],
  ] as const)
    expect(await keys.verify(key, text, given), `${key} ${given}`).toBe(false)
})
