import { beforeEach, describe, expect, test, vi } from 'vitest'
import { createBatches } from '../../../src/app/batches'
import type { KeptHandle } from '../../../src/app/live-batch'
import { verdictsOf } from '../../../src/app/sign/device-verdict'
import { journalledKeys, ownKey } from '../../../src/app/sign/journalled-keys'
import { keyIn } from '../../../src/batch/key-trail'
import type { DeviceRow } from '../../../src/batch/record-device'
import { deviceRecord } from '../../../src/batch/record-device'
import { faultInBody } from '../../../src/batch/schemas/sound-body'
import { type SimulatedDeviceKeys, simulatedDeviceKeys } from '../../../src/devices/device-keys/simulated-device-keys'
import { openWorld, type World } from '../../support/app-world'
import { lotionHeader } from '../../support/formulas'

let world: World
let keys: SimulatedDeviceKeys
let handle: KeptHandle

/** A page of the tablet whose batch `one` is in hand. */
async function openTablet(): Promise<void> {
  const { store, writer } = world
  const batches = createBatches({ log: store.log, writer, deviceKeys: async () => keys })
  await batches.start({ do: 'open', header: lotionHeader(), preflight: [] }, [])
  handle = (await batches.open('one')) as KeptHandle
}

beforeEach(async () => {
  world = openWorld()
  keys = simulatedDeviceKeys()
  await openTablet()
})

const events = () => world.store.log.read('batch:one')
const kinds = async () => (await events()).map(({ kind }) => kind)
const record = async () => deviceRecord(await events())
const verdicts = async (rows: readonly DeviceRow[], with_ = keys) => [
  ...(await verdictsOf({ log: world.store.log, deviceKeys: async () => with_ }, rows)).values(),
]
const close = (decision: 'hold' | 'accept' = 'hold') => handle.intend({ do: 'close', decision, note: 'trial' })
const signed = (times: number) => vi.waitFor(async () => expect((await record()).rows).toHaveLength(times))

describe('closing a batch', () => {
  test('[E91] is signed by the tablet behind it: the end, and all that it stands on', async () => {
    expect(await close()).toMatchObject({ ok: true, state: 'recorded' })
    await signed(1)
    expect(await kinds()).toEqual(['opened', 'closed', 'device-signed'])
    const { rows, isUnsigned } = await record()
    expect(rows).toMatchObject([{ covers: 2, after: { entries: 0, strikes: 0 } }])
    expect(isUnsigned).toBe(false)
    expect(await verdicts(rows)).toMatchObject([{ fits: true, from: 'here', insteadOf: [] }])
    expect((await events()).map(faultInBody)).toEqual([null, null, null])
  })

  test('[E91] is answered before the tablet has signed', async () => {
    await keys.make()
    let asked = false
    keys.sign = () => {
      asked = true
      return new Promise(() => undefined)
    }
    expect(await close()).toMatchObject({ ok: true })
    expect(handle.view.value.state.stage).toBe('closed')
    await vi.waitFor(() => expect(asked).toBe(true))
    expect(await kinds()).toEqual(['opened', 'closed'])
  })

  test('[E91] without the arithmetic closes all the same, and says that nothing was signed', async () => {
    keys.setMood('without')
    expect(await close()).toMatchObject({ ok: true, state: 'recorded' })
    await new Promise((done) => setTimeout(done, 20))
    expect(await record()).toEqual({ rows: [], isUnsigned: true })
    expect(handle.unsaved.value).toEqual([])
  })

  test('[E91] with storage full leaves nothing on the screen that nobody asked for', async () => {
    await close()
    await signed(1)
    const sign = keys.sign
    keys.sign = (text) => {
      world.store.setMood('full')
      return sign(text)
    }
    expect(await close('accept')).toMatchObject({ ok: true })
    await new Promise((done) => setTimeout(done, 20))
    expect(await record()).toMatchObject({ rows: [{ covers: 2 }], isUnsigned: true })
    expect(handle.unsaved.value).toEqual([])
  })

  test('[E91] a signature under the whole batch is signed by the tablet as well, one at a step is not', async () => {
    await close()
    await signed(1)
    // Who has seen all but the tablet's own signature has seen all there is to see.
    const seen = (await events())[1]?.hash ?? null
    const by = [{ person: 'person-mo', meaning: 'reviewed', how: 'name' } as const]
    expect(await handle.intend({ do: 'sign', signatures: { by, seen } })).toMatchObject({ ok: true })
    await signed(2)
    expect((await record()).rows.map(({ covers, after }) => [covers, after.entries])).toEqual([
      [2, 0],
      [4, 0],
    ])
  })

  test('[E91] what is added later is told beside it, and nobody strikes it out', async () => {
    await close()
    await signed(1)
    await handle.intend({ do: 'note', text: 'thicker than the last one' })
    const { rows } = await record()
    expect(rows[0]?.after).toEqual({ entries: 1, strikes: 0 })
    const strike = await handle.intend({ do: 'strike', entry: rows[0]?.entry ?? '', reason: 'never mind' })
    expect(strike).toMatchObject({ ok: false, refusal: { code: 'CANNOT_BE_STRUCK' } })
  })
})

describe('the key', () => {
  test('[E92] stands in the journal before anything is signed with it, once', async () => {
    await close()
    await signed(1)
    const own = (await ownKey(keys)) ?? ''
    const trail = await world.store.log.read(`device:${own}`)
    expect(trail.map(({ kind, by }) => [kind, by])).toEqual([['key-made', 'person-rk']])
    expect(trail.map(faultInBody)).toEqual([null])
    expect(trail.map((event) => faultInBody({ ...event, stream: 'device:another' }))).toEqual(['body.publicKey'])
    await handle.intend({ do: 'close', decision: 'accept', note: 'thick enough' })
    await signed(2)
    expect(await world.store.log.read(`device:${own}`)).toHaveLength(1)
  })

  test('[E92] that cannot be journalled signs nothing, and is journalled the next time', async () => {
    const { log } = world.store
    const append = log.append
    log.append = async (request) =>
      request.events[0]?.stream.startsWith('device:') === true
        ? { state: 'not-saved', reason: 'STORAGE_FULL' }
        : append(request)
    await close()
    await vi.waitFor(async () => expect(await keys.kept()).not.toBeNull())
    await new Promise((done) => setTimeout(done, 20))
    expect((await record()).rows).toEqual([])
    log.append = append
    await close('accept')
    await signed(1)
    expect(await journalledKeys(log)).toHaveLength(1)
  })

  test.each([
    ['missing', () => keys.forget()],
    ['unusable', () => keys.setMood('unusable')],
  ] as const)(
    '[E92] that is %s is made anew; that is an entry, and what it signed still verifies',
    async (why, lose) => {
      await close()
      await signed(1)
      const old = (await ownKey(keys)) ?? ''
      lose()
      await close('accept')
      await signed(2)
      const now = (await ownKey(keys)) ?? ''
      expect(now).not.toBe(old)
      const trail = await world.store.log.read(`device:${old}`)
      expect(keyIn(`device:${old}`, trail)?.lost).toMatchObject({ why, instead: now })
      expect(trail.map(faultInBody)).toEqual([null, null])
      expect(await verdicts((await record()).rows)).toMatchObject([
        { fits: true, from: 'journal', journalled: { lost: { why } } },
        { fits: true, from: 'here', insteadOf: [{ key: old }] },
      ])
    },
  )

  test('[E92] of another tablet, which a file brought, is not said to be gone by who has one', async () => {
    await close()
    await signed(1)
    const other = simulatedDeviceKeys('another tablet')
    const mine = keys
    keys = other
    await close('accept')
    await signed(2)
    keys = mine
    await handle.intend({ do: 'close', decision: 'hold', note: 'again' })
    await signed(3)
    const [own, theirs] = [await ownKey(mine), await ownKey(other)]
    expect(keyIn('', await world.store.log.read(`device:${theirs}`))?.lost).toBeUndefined()
    expect((await journalledKeys(world.store.log)).find(({ key }) => key === own)?.lost?.instead).toBe(theirs)
  })

  test('[E92] two batches closed at once share the first key', async () => {
    await Promise.all([close(), close('accept')])
    await signed(2)
    expect(await journalledKeys(world.store.log)).toHaveLength(1)
  })
})

describe('a signature', () => {
  const rows = async (): Promise<readonly [DeviceRow, ...DeviceRow[]]> => {
    await close()
    await signed(1)
    return (await record()).rows as [DeviceRow, ...DeviceRow[]]
  }

  test('[E93] of another batch, end, key or text does not fit', async () => {
    const [row] = await rows()
    const other = simulatedDeviceKeys('another tablet')
    const publicKey = await other.make()
    const changed: readonly Partial<DeviceRow>[] = [
      { stream: 'batch:two' },
      { signed: { ...row.signed, head: '0'.repeat(64) } },
      { signed: { ...row.signed, publicKey } },
      { signed: { ...row.signed, key: '0'.repeat(64) } },
      { signed: { ...row.signed, signature: '' } },
      { covers: null },
    ]
    for (const each of changed)
      expect(await verdicts([{ ...row, ...each }]), JSON.stringify(each)).toMatchObject([{ fits: false }])
    expect(await verdicts([row])).toMatchObject([{ fits: true }])
  })

  test('[E93] of a record that was written anew from an entry on covers an entry that is not here', async () => {
    await rows()
    const [opened, closed, device] = await events()
    const forged = closed && { ...closed, body: { decision: 'accept' }, hash: 'f'.repeat(64) }
    const found = deviceRecord([opened, forged, device].flatMap((event) => event ?? []))
    expect(found).toMatchObject({ rows: [{ covers: null }], isUnsigned: true })
  })

  test('[E93] of a key that nothing here knows of fits or does not, and is said to be unknown', async () => {
    const [row] = await rows()
    const elsewhere = openWorld()
    const there = { log: elsewhere.store.log, deviceKeys: async () => simulatedDeviceKeys('there') }
    expect([...(await verdictsOf(there, [row])).values()]).toMatchObject([{ fits: true, from: 'nowhere' }])
    keys.setMood('without')
    expect(await verdicts([row])).toMatchObject([{ fits: null }])
  })
})
