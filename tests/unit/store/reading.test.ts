import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { type Event, inFoldOrder, type Tip } from '../../../src/batch/event'
import { seal } from '../../../src/batch/seal'
import { emptyTip } from '../../../src/batch/tip'
import { addMissing } from '../../../src/store/add-missing'
import type { Pages } from '../../../src/store/pages'
import { idsOf, newTablet, openPage, project, request, type Tablet, write } from './support.ts'

let tablet: Tablet
beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  tablet = newTablet()
})

const entryAt = (stream: string, at: string, kind = 'noted', tip: Tip = emptyTip): Event =>
  seal({ kind, body: {} }, tip, { stream, replica: 'r1', id: `${stream} ${at}`, at, by: 'RK' })

describe('heads', () => {
  it('[S21] rows come newest first whatever the local offset, by shelf, limited, and page by page', async () => {
    const { store } = await openPage(tablet)
    const moments: Record<string, string> = {
      'batch:first': '2026-03-02T09:00:00.000+01:00',
      'batch:third': '2026-03-02T08:30:00.000+00:00',
      'batch:second': '2026-03-02T17:15:00.000+09:00',
      'formula:other': '2026-03-02T12:00:00.000+00:00',
    }
    for (const [stream, at] of Object.entries(moments)) await store.log.append(request([entryAt(stream, at)]))
    const closed = entryAt('batch:closed', '2026-03-02T10:00:00.000+00:00', 'closed')
    await store.log.append(request([closed]))
    const names = async (query: object) =>
      (await store.log.heads({ family: 'batch', ...query })).map((row) => row.stream)
    expect(await names({})).toEqual(['batch:closed', 'batch:third', 'batch:second', 'batch:first'])
    expect(await names({ shelf: 'open' })).toEqual(['batch:third', 'batch:second', 'batch:first'])
    expect(await names({ shelf: 'open', limit: 2 })).toEqual(['batch:third', 'batch:second'])
    expect(await names({ shelf: 'open', before: moments['batch:second'] })).toEqual(['batch:first'])
  })

  it('[S21] a row is the projection handed in, with the count and the last entry of its stream', async () => {
    const { store } = await openPage(tablet)
    const { events } = write('batch:a', 3)
    await store.log.append(request(events.slice(0, 1)))
    await store.log.append({
      ...request(events.slice(1)),
      projection: () => ({ shelf: 'open', summary: { code: 'A1' } }),
    })
    expect(await store.log.head('batch:a')).toEqual({
      stream: 'batch:a',
      family: 'batch',
      shelf: 'open',
      touchedAt: events[2]?.at,
      count: 3,
      lamport: 3,
      hash: events[2]?.hash,
      summary: { code: 'A1' },
    })
    expect(await store.log.head('batch:none')).toBeNull()
  })

  it('[S21] opening and listing read heads and never the entries', async () => {
    const first = await openPage(tablet)
    for (let i = 0; i < 20; i++) await first.store.log.append(request(write(`batch:${i}`, 3).events))
    first.kill()
    const all = vi.spyOn(IDBObjectStore.prototype, 'getAll')
    const count = vi.spyOn(IDBObjectStore.prototype, 'count')
    const second = await openPage(tablet)
    await second.store.log.heads({ family: 'batch', limit: 10 })
    expect(all.mock.contexts.map((store) => (store as IDBObjectStore).name)).not.toContain('events')
    expect(count).not.toHaveBeenCalled()
    vi.restoreAllMocks()
  })
})

describe('forks', () => {
  it('[S22] entries of two replicas that grew apart come to the same stream in any order of arrival', async () => {
    const { store } = await openPage(tablet)
    const db = await store.connection.get()
    const trunk = write('batch:a', 2)
    const left = write('batch:a', 2, 'r1', trunk.tip).events
    const right = write('batch:a', 3, 'r2', { ...trunk.tip, next: 0 }).events
    await addMissing(db, new Map([['batch:a', [...right].reverse()]]), project)
    await addMissing(db, new Map([['batch:a', [...left, ...trunk.events]]]), project)
    const expected = [...trunk.events, ...left, ...right].sort(inFoldOrder)
    expect(idsOf(await store.log.read('batch:a'))).toEqual(idsOf(expected))
    expect((await store.log.head('batch:a'))?.hash).toBe(expected.at(-1)?.hash)
  })

  it('[S22] a stream that no projection understands is listed as unreadable and keeps its entries', async () => {
    const { store } = await openPage(tablet)
    const broken = () => {
      throw new Error('unknown kind')
    }
    await addMissing(await store.connection.get(), new Map([['batch:a', write('batch:a', 2).events]]), broken)
    expect(await store.log.head('batch:a')).toMatchObject({ shelf: 'unreadable', summary: null, count: 2 })
    expect(await store.log.read('batch:a')).toHaveLength(2)
  })
})

describe('pages and drafts', () => {
  it('[S23] what one page appended is told to its listeners and to the other pages, after it is durable', async () => {
    const order: unknown[] = []
    const pages: Pages = { tell: (message) => order.push(message), onMessage: () => undefined }
    const { store, journal } = await openPage(tablet, pages)
    store.log.onAppended((events, from) => order.push([from, idsOf(events)]))
    const append = journal.append
    vi.spyOn(journal, 'append').mockImplementation(async (texts) => {
      await append(texts)
      order.push('in the journal')
    })
    const { events } = write('batch:a', 1)
    await store.log.append(request(events))
    expect(order).toEqual(['in the journal', ['this-page', idsOf(events)], { kind: 'appended', events }])
  })

  it('[S24] a draft is there after a restart with its last text, and gone once cleared', async () => {
    const first = await openPage(tablet)
    for (const text of ['1', '12', '12,', '12,3']) void first.store.drafts.write('run/batch:a/reading', text)
    await first.store.drafts.write('run/batch:b/reading', '7')
    await first.store.drafts.write('run/batch:b/reading', null)
    first.kill()
    const second = await openPage(tablet)
    expect(await second.store.drafts.read('run/batch:a/reading')).toBe('12,3')
    expect(await second.store.drafts.all('run/')).toEqual(new Map([['run/batch:a/reading', '12,3']]))
  })
})
