import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { idsOf, newTablet, openPage, request, type Tablet, write } from './support.ts'

let tablet: Tablet
beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  tablet = newTablet()
})

describe('appending', () => {
  it('[S1] an entry is recorded only when the database and the journal both hold it', async () => {
    const { store, journal } = await openPage(tablet)
    const { events } = write('batch:a', 3)
    expect(await store.log.append(request(events))).toEqual({ state: 'recorded' })
    expect(idsOf(await store.log.read('batch:a'))).toEqual(idsOf(events))
    const [copy] = await journal.read(['batch:a'])
    expect(idsOf(copy ?? [])).toEqual(idsOf(events))
  })

  it('[S2] a writer who has not seen the last entry gets a conflict, and neither copy takes anything', async () => {
    const { store, journal } = await openPage(tablet)
    const mine = write('batch:a', 1)
    await store.log.append(request(mine.events))
    const rival = write('batch:a', 1, 'r1', { ...mine.tip, hash: null })
    expect(await store.log.append({ ...request(rival.events), after: null })).toEqual({ state: 'conflict' })
    expect(idsOf(await store.log.read('batch:a'))).toEqual(idsOf(mine.events))
    expect((await journal.table()).streams.map((row) => row.count)).toEqual([1])
  })

  it('[S2] of two pages that append after the same entry exactly one succeeds', async () => {
    const one = await openPage(tablet)
    const other = await openPage(tablet)
    const { events, tip } = write('batch:a', 1)
    await one.store.log.append(request(events))
    const left = write('batch:a', 1, 'r1', tip, 'left')
    const right = write('batch:a', 1, 'r1', tip, 'right')
    const answers = await Promise.all([
      one.store.log.append(request(left.events)),
      other.store.log.append(request(right.events)),
    ])
    expect(answers.map((answer) => answer.state).sort()).toEqual(['conflict', 'recorded'])
    expect(await one.store.log.read('batch:a')).toHaveLength(2)
  })

  it('[S3] the same entries again count as written and stand once', async () => {
    const { store } = await openPage(tablet)
    const { events } = write('batch:a', 2)
    await store.log.append(request(events))
    expect(await store.log.append(request(events))).toEqual({ state: 'recorded' })
    expect(await store.log.read('batch:a')).toHaveLength(2)
    expect((await store.log.head('batch:a'))?.count).toBe(2)
  })

  it('[S4] an entry the journal failed to take is in one copy, and recorded once the journal runs again', async () => {
    const { store, journal } = await openPage(tablet)
    const moved: unknown[] = []
    store.log.onEntryState((ids, state) => moved.push([ids, state]))
    journal.breakDown()
    const { events } = write('batch:a', 1)
    expect(await store.log.append(request(events))).toEqual({ state: 'one-copy' })
    journal.mend()
    await vi.waitFor(() => expect(moved).toEqual([[idsOf(events), 'recorded']]), 3_000)
    const [copy] = await journal.read(['batch:a'])
    expect(copy).toHaveLength(1)
  })

  it('[S5] with the database dead an intention is held in the journal, through a restart, until released', async () => {
    const first = await openPage(tablet)
    const working = indexedDB
    vi.stubGlobal('indexedDB', lostDatabase)
    ;(await first.store.connection.get()).close()
    const { events } = write('batch:a', 1)
    expect(await first.store.log.append(request(events))).toEqual({ state: 'held' })
    const held = {
      id: 'h1',
      stream: 'batch:a',
      at: '2026-03-02T09:00:00.000+01:00',
      by: 'RK',
      intention: { kind: 'weigh' },
    }
    expect(await first.store.log.hold(held)).toBe('held')
    first.journal.breakDown()
    expect(await first.store.log.heldIntentions()).toEqual([held])
    first.kill()
    vi.stubGlobal('indexedDB', working)
    const second = await openPage(tablet)
    expect(await second.store.log.heldIntentions()).toEqual([held])
    await second.journal.merge()
    expect(await second.store.log.heldIntentions()).toEqual([held])
    await second.store.log.releaseHeld('h1')
    expect(await second.store.log.heldIntentions()).toEqual([])
    second.kill()
    const third = await openPage(tablet)
    await third.journal.merge()
    expect(await third.store.log.heldIntentions()).toEqual([])
  })

  it('[S5] with both copies dead an entry is not saved, and the answer says why', async () => {
    const { store, journal } = await openPage(tablet)
    vi.stubGlobal('indexedDB', lostDatabase)
    ;(await store.connection.get()).close()
    journal.breakDown()
    expect(await store.log.append(request(write('batch:a', 1).events))).toEqual({
      state: 'not-saved',
      reason: 'STORAGE_REFUSED',
    })
    expect(await store.log.hold({ id: 'h', stream: 'batch:a', at: '', by: '', intention: null })).toBe('not-saved')
  })

  it('[S6] storage that is full refuses the entry, writes nothing, and works again when there is room', async () => {
    const { store } = await openPage(tablet)
    const { events } = write('batch:a', 1)
    const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    expect(await store.log.append(request(events))).toEqual({ state: 'not-saved', reason: 'STORAGE_FULL' })
    full.mockRestore()
    expect(await store.log.read('batch:a')).toEqual([])
    expect(await store.log.append(request(events))).toEqual({ state: 'recorded' })
  })

  it('[S7] a connection that died is opened again and the entry written, once', async () => {
    const { store } = await openPage(tablet)
    const { events, tip } = write('batch:a', 1)
    await store.log.append(request(events))
    ;(await store.connection.get()).close()
    const more = write('batch:a', 1, 'r1', tip)
    expect(await store.log.append(request(more.events))).toEqual({ state: 'recorded' })
    expect(await store.log.read('batch:a')).toHaveLength(2)
  })

  it('[S8] a database that newer code made is left untouched, and the store says so', async () => {
    const newer = await new Promise<IDBDatabase>((resolve) => {
      const opening = indexedDB.open('pannikin', 99)
      opening.onupgradeneeded = () => opening.result.createObjectStore('tomorrow')
      opening.onsuccess = () => resolve(opening.result)
    })
    newer.close()
    const { store } = await openPage(tablet)
    expect(store.log.state().database).toBe('newer')
    expect(await store.log.append(request(write('batch:a', 1).events))).toEqual({
      state: 'not-saved',
      reason: 'STORAGE_NEWER',
    })
    expect(await indexedDB.databases()).toEqual([{ name: 'pannikin', version: 99 }])
  })

  it('[S8] without a database at all the store opens, says refused, and loses no promise', async () => {
    vi.stubGlobal('indexedDB', undefined)
    const { store } = await openPage(tablet)
    expect(store.log.state().database).toBe('refused')
    expect(await store.log.append(request(write('batch:a', 1).events))).toEqual({
      state: 'not-saved',
      reason: 'STORAGE_REFUSED',
    })
    expect(await store.log.heads({ family: 'batch' })).toEqual([])
  })
})

/** Opening fails as it does when the browser has lost touch with its storage. */
const lostDatabase = {
  open: () => {
    throw new DOMException('lost', 'UnknownError')
  },
}
