import { beforeEach, expect, test } from 'vitest'
import { signEnd } from '../../../src/app/sign/sign-head'
import { signedPreview } from '../../../src/app/sign/signed-preview'
import type { Draft, Event } from '../../../src/batch/event'
import { seal } from '../../../src/batch/seal'
import { advance, emptyTip } from '../../../src/batch/tip'
import { type SimulatedDeviceKeys, simulatedDeviceKeys } from '../../../src/devices/device-keys/simulated-device-keys'
import { memoryStore } from '../../../src/store/memory-store'
import { openWorld, type World } from '../../support/app-world'
import { lotionHeader } from '../../support/formulas'

let world: World
let keys: SimulatedDeviceKeys

beforeEach(() => {
  world = openWorld()
  keys = simulatedDeviceKeys()
})

/** A whole log, each entry on the one before it: anybody can make one. */
function chain(drafts: readonly Draft[]): readonly Event[] {
  const place = { stream: 'batch:one', replica: 'tablet', at: '2026-11-24T10:00:00Z', by: 'person-rk' }
  let tip = emptyTip
  return drafts.map((draft, index) => {
    const event = seal(draft, tip, { ...place, id: `id-${index}` })
    tip = advance(tip, event)
    return event
  })
}

const closed = (decision: string): readonly Draft[] => [
  { kind: 'opened', body: lotionHeader() },
  { kind: 'closed', body: { decision } },
]

async function fileOf(events: readonly Event[]): Promise<Blob> {
  const { log, archive } = memoryStore('there')
  await log.append({ events, after: null, projection: () => ({ shelf: 'finished', summary: null }) })
  const answer = await archive.write(['batch:one'], '2026-11-24T11:00:00Z')
  if (!answer.ok) throw new Error(answer.refusal.code)
  return answer.value.file
}

async function previewOf(file: Blob) {
  const answer = await world.store.archive.inspect(file)
  if (!answer.ok) throw new Error(answer.refusal.code)
  return signedPreview({ log: world.store.log, deviceKeys: async () => keys }, answer.value.signed)
}

async function signedFile(decision: string): Promise<readonly Draft[]> {
  const drafts = closed(decision)
  const head = chain(drafts).at(-1)?.hash ?? ''
  const { log } = memoryStore('there')
  const there = { log, writer: world.writer, deviceKeys: async () => simulatedDeviceKeys('there') }
  const body = await signEnd(there, { stream: 'batch:one', head, by: 'person-rk' })
  return [...drafts, { kind: 'device-signed', body }]
}

test('[E93] a file that comes in from another tablet tells that its signature fits', async () => {
  const file = await fileOf(chain(await signedFile('hold')))
  expect(await previewOf(file)).toEqual({ says: '1 signature of a tablet fits.', unfit: [] })
})

test('[E93] a file whose chain was written anew, hash by hash, is told by its signature', async () => {
  const [, , device] = await signedFile('hold')
  const [opened, accepted] = closed('accept')
  const head = chain(closed('accept')).at(-1)?.hash
  const forged = [opened, accepted, device].flatMap((draft) => draft ?? [])
  const led = forged.with(2, { kind: 'device-signed', body: { ...(device?.body as object), head } })
  const [forgot, moved] = [await previewOf(await fileOf(chain(forged))), await previewOf(await fileOf(chain(led)))]
  expect(forgot.unfit).toEqual([expect.stringMatching(/^QW-LOT-01.*the entry that it signed is not here\.$/)])
  expect(moved.unfit).toEqual([expect.stringMatching(/^QW-LOT-01.*what stands here is not what was signed\.$/)])
  expect(moved.says).toBeNull()
})

test('[E93] of what is here already nothing is told anew', async () => {
  const file = await fileOf(chain(await signedFile('hold')))
  await world.store.archive.apply(file)
  expect(await previewOf(file)).toEqual({ says: null, unfit: [] })
  const [opened, closing, device] = await signedFile('hold')
  const longer = [opened, closing, device, device].flatMap((draft) => draft ?? [])
  expect(await previewOf(await fileOf(chain(longer)))).toMatchObject({ says: '1 signature of a tablet fits.' })
})
