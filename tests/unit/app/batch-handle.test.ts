import { beforeEach, describe, expect, test } from 'vitest'
import type { Outcome } from '../../../src/app/app'
import { openHandle } from '../../../src/app/batch-handle'
import type { KeptHandle } from '../../../src/app/live-batch'
import type { Event } from '../../../src/batch/event'
import { isDone } from '../../../src/batch/progress'
import { countingIds } from '../../../src/devices/ids/counting-ids'
import { openWorld, type World } from '../../support/app-world'
import { grams } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'

const header = lotionHeader()
const projection = () => ({ shelf: 'in-hand', summary: null })
const weigh = (step: string, text: string) =>
  ({ do: 'weigh', step, reading: { mode: 're-tare', readingUg: grams(text) } }) as const

const entriesOf = (outcome: Outcome): readonly string[] => {
  if (!outcome.ok) throw new Error(outcome.refusal.code)
  return outcome.entries
}

let world: World
let handle: KeptHandle

beforeEach(async () => {
  world = openWorld()
  await world.batches.start({ do: 'open', header, preflight: [] }, [])
  handle = (await world.batches.open('one')) as KeptHandle
})

const state = () => handle.view.value.state
const stored = (): Promise<readonly Event[]> => world.store.log.read('batch:one')

describe('an intention', () => {
  test('[E7] is durable before it is shown, and the view is a new object', async () => {
    const before = handle.view.value
    const entries = entriesOf(await handle.intend(weigh('a-water', '348.85')))
    expect(handle.view.value).not.toBe(before)
    expect(isDone(before.state, 'a-water')).toBe(false)
    expect(isDone(state(), 'a-water')).toBe(true)
    expect(entries.map((id) => handle.entryStates.value.get(id))).toEqual(['recorded'])
    expect((await stored()).map((event) => event.id)).toEqual(expect.arrayContaining([...entries]))
  })

  test('[E7] that is refused writes nothing and changes nothing', async () => {
    const before = handle.view.value
    const outcome = await handle.intend(weigh('a-water', '900'))
    expect(outcome).toMatchObject({ ok: false, refusal: { code: 'OVER_VESSEL' } })
    expect(handle.view.value).toBe(before)
    expect(await stored()).toHaveLength(1)
  })

  test('[E7] waits for the one before: a double tap is decided twice and written once', async () => {
    const [first, second] = await Promise.all([1, 2].map(() => handle.intend(weigh('a-water', '348.85'))))
    expect(first?.ok).toBe(true)
    expect(second).toMatchObject({ ok: false, refusal: { code: 'STEP_DONE' } })
  })

  test('[E7] is written in the name of who has the batch', async () => {
    await handle.intend({ do: 'hand-over', to: 'person-mo' })
    await handle.intend({ do: 'note', text: 'mine now' })
    expect((await stored()).map((event) => event.by)).toEqual(['person-rk', 'person-rk', 'person-mo'])
  })
})

describe('two pages on one batch', () => {
  /** The other page: the same storage, but it hears nothing of this one until it writes. */
  const otherPage = async (log = world.store.log): Promise<KeptHandle> => {
    const ids = countingIds()
    const writer = { ...world.writer, ids: { next: () => `other-${ids.next()}` } }
    return openHandle({ log, writer, onChange: () => undefined }, 'one', await stored())
  }

  test('[E7] what was decided on an older view is decided anew, and neither loses an entry', async () => {
    const [mine, other] = [await otherPage(), await otherPage()]
    entriesOf(await other.intend(weigh('b-shea', '10')))
    expect(isDone(mine.view.value.state, 'b-shea')).toBe(false)
    entriesOf(await mine.intend(weigh('b-squalane', '15')))
    entriesOf(await other.intend(weigh('b-cetearyl', '12.5')))
    for (const { state: seen } of [mine.view.value, other.view.value])
      expect(isDone(seen, 'b-shea') && isDone(seen, 'b-squalane')).toBe(true)
    expect(other.view.value.state.forked).toBe(false)
    expect(other.view.value.state.entries).toHaveLength((await stored()).length)
  })

  test('[E7] what both want is done once: the second hears that it is done', async () => {
    const other = await otherPage()
    const [first, second] = await Promise.all([other, handle].map((page) => page.intend(weigh('b-shea', '10'))))
    expect([first?.ok, second?.ok]).toEqual([true, false])
    expect(second).toMatchObject({ refusal: { code: 'STEP_DONE' } })
    expect(await stored()).toHaveLength(2)
  })

  test('[E7] what the other page wrote is shown at once', async () => {
    const { log } = openWorld().store
    await log.append({ events: await stored(), after: null, projection })
    await (await otherPage(log)).intend(weigh('b-shea', '10'))
    const events = (await log.read('batch:one')).slice(1)
    world.store.receive({ events, after: state().lastHash, projection })
    await handle.intend({ do: 'note', text: 'seen' })
    expect(isDone(state(), 'b-shea')).toBe(true)
    expect(handle.fromElsewhere.value?.event.id).toBe(events.at(-1)?.id)
  })
})

describe('when storage fails', () => {
  test('[S51] one copy: the run goes on, and the entry moves to recorded when the second copy is back', async () => {
    world.store.setMood('fail-journal')
    const outcome = await handle.intend(weigh('a-water', '348.85'))
    expect(outcome).toMatchObject({ ok: true, state: 'one-copy' })
    const [id = ''] = entriesOf(outcome)
    expect(handle.entryStates.value.get(id)).toBe('one-copy')
    world.store.setMood('well')
    expect(handle.entryStates.value.get(id)).toBe('recorded')
  })

  test('[S51] not saved: the intention stays with its reason, nothing is shown as done, and retry writes it', async () => {
    world.store.setMood('full')
    expect(await handle.intend(weigh('a-water', '348.85'))).toMatchObject({ refusal: { code: 'STORAGE_FULL' } })
    expect(handle.unsaved.value).toMatchObject([{ reason: 'STORAGE_FULL', state: 'not-saved' }])
    expect(isDone(state(), 'a-water')).toBe(false)
    await handle.retry()
    expect(handle.unsaved.value).toHaveLength(1)
    world.store.setMood('well')
    await handle.retry()
    expect(handle.unsaved.value).toEqual([])
    expect(isDone(state(), 'a-water')).toBe(true)
  })

  test('[S51] held: kept in the second copy while the database is dead, decided once when it is back', async () => {
    world.store.setMood('fail-database')
    expect(await handle.intend(weigh('a-water', '348.85'))).toMatchObject({ ok: true, state: 'held' })
    expect(handle.unsaved.value).toMatchObject([{ state: 'held' }])
    expect(await world.store.log.heldIntentions()).toHaveLength(1)
    world.store.setMood('well')
    await world.batches.decideHeld()
    expect(isDone(state(), 'a-water')).toBe(true)
    expect(handle.unsaved.value).toEqual([])
    expect(await world.store.log.heldIntentions()).toEqual([])
    await world.batches.decideHeld()
    expect(await stored()).toHaveLength(2)
  })

  test('[S51] held: what the batch does not take any more stays on screen with a word of why', async () => {
    world.store.setMood('fail-database')
    await handle.intend(weigh('b-shea', '10'))
    world.store.setMood('well')
    await handle.intend(weigh('b-shea', '9.98'))
    await world.batches.decideHeld()
    expect(handle.unsaved.value).toMatchObject([{ reason: 'HELD_REFUSED', state: 'not-saved' }])
    expect(await stored()).toHaveLength(2)
  })
})

describe('the batches of a page', () => {
  test('[E7] the list follows what happens, and leaves out what is ended', async () => {
    expect(world.batches.inHand.value).toMatchObject([{ id: 'one', done: 0 }])
    await handle.intend(weigh('a-water', '348.85'))
    expect(world.batches.inHand.value).toMatchObject([{ id: 'one', done: 1 }])
    await handle.intend({ do: 'abandon', reason: 'start again' })
    expect(world.batches.inHand.value).toEqual([])
    expect(await world.batches.finished(10)).toMatchObject([{ id: 'one', stage: 'abandoned' }])
  })

  test('[E7] a batch is opened once; what is not there is null', async () => {
    expect(await world.batches.open('one')).toBe(handle)
    expect(await world.batches.open('two')).toBeNull()
  })

  test('[E7] what cannot be planned is not started', async () => {
    const bad = { ...header, id: 'two', sizeUg: 0 }
    expect(await world.batches.start({ do: 'open', header: bad, preflight: [] }, [])).toMatchObject({
      refusal: { code: 'SIZE_BAD' },
    })
    expect(await world.store.log.read('batch:two')).toEqual([])
  })
})
