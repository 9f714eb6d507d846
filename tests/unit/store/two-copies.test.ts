import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Event } from '../../../src/batch/event'
import type { HealReport } from '../../../src/ports/event-log'
import { verifyAll } from '../../../src/store/verify'
import { whole } from '../../../src/store/whole-database'
import { idsOf, newTablet, type OpenPage, openAtOnce, openPage, request, type Tablet, write } from './support.ts'

let tablet: Tablet
beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory())
  tablet = newTablet()
})

const loseDatabase = () => vi.stubGlobal('indexedDB', new IDBFactory())
const loseJournal = () => tablet.folder.files.clear()
const reportsOf = ({ store }: OpenPage): readonly HealReport[] => {
  const reports: HealReport[] = []
  store.log.onHealed((report) => reports.push(report))
  return reports
}
const copyOf = async (page: OpenPage, stream: string): Promise<readonly string[]> =>
  idsOf((await page.journal.read([stream]))[0] ?? []).toSorted()
const wait = (ms: number) => new Promise((done) => setTimeout(done, ms))

/** A page that recorded two streams and was killed. */
async function recorded(): Promise<{ a: readonly Event[]; b: readonly Event[]; replica: string }> {
  const page = await openPage(tablet)
  const a = write('batch:a', 5).events
  const b = write('batch:b', 3).events
  for (const events of [a, b]) expect((await page.store.log.append(request(events))).state).toBe('recorded')
  const { replica } = page.store.log
  page.kill()
  return { a, b, replica }
}

describe('the two copies', () => {
  it('[S9] equal copies are left alone, and nothing is said', async () => {
    await recorded()
    const page = await openPage(tablet)
    expect(reportsOf(page)).toEqual([])
    expect(page.store.log.state().compared).toBe(true)
  })

  it('[S10] a database lost as a whole comes back from the journal, under a new replica, and the log says so', async () => {
    const { a, b, replica } = await recorded()
    loseDatabase()
    const page = await openPage(tablet)
    expect(idsOf(await page.store.log.read('batch:a'))).toEqual(idsOf(a))
    expect(idsOf(await page.store.log.read('batch:b'))).toEqual(idsOf(b))
    expect((await page.store.log.heads({ family: 'batch' })).map(({ stream, count }) => [stream, count])).toEqual([
      ['batch:a', 5],
      ['batch:b', 3],
    ])
    expect(reportsOf(page)).toEqual([{ code: 'HEALED_DATABASE', entries: 8, streams: 2 }])
    expect(page.store.log.replica).not.toBe(replica)
    await vi.waitFor(async () =>
      expect((await page.store.log.read('settings:storage')).map(({ kind, body }) => [kind, body])).toEqual([
        ['healed', { code: 'HEALED_DATABASE', entries: 8, streams: 2 }],
      ]),
    )
  })

  it('[S11] a journal that is gone is written again from the database', async () => {
    const { a, b } = await recorded()
    loseJournal()
    const page = await openPage(tablet)
    expect(await copyOf(page, 'batch:a')).toEqual(idsOf(a))
    expect(await copyOf(page, 'batch:b')).toEqual(idsOf(b))
    expect(reportsOf(page)).toEqual([{ code: 'HEALED_JOURNAL', entries: 8, streams: 2 }])
  })

  it('[S12] each copy behind in another stream is brought up to both', async () => {
    const { a, b } = await recorded()
    const first = await openPage(tablet)
    first.journal.breakDown()
    const onlyDatabase = write('batch:c', 2).events
    await first.store.log.append(request(onlyDatabase))
    const db = whole(await first.store.connection.get())
    await db.delete('events', ['batch:b', 'r1', 2])
    const row = await db.get('heads', 'batch:b')
    if (row) await db.put('heads', { ...row, count: 2 })
    first.kill()
    const page = await openPage(tablet)
    expect(idsOf(await page.store.log.read('batch:b'))).toEqual(idsOf(b))
    expect(await copyOf(page, 'batch:c')).toEqual(idsOf(onlyDatabase))
    expect(idsOf(await page.store.log.read('batch:a'))).toEqual(idsOf(a))
    expect(reportsOf(page)).toEqual([{ code: 'HEALED_BOTH', entries: 3, streams: 2 }])
  })

  it('[S13] a last line cut off anywhere costs no other line, and is written again', async () => {
    const { b } = await recorded()
    const [name, bytes] = [...tablet.folder.files].find(([file]) => file.startsWith('page.')) ?? ['', new Uint8Array()]
    const lastLine = bytes.length - (bytes.lastIndexOf(0x0a, bytes.length - 2) + 1)
    for (let cut = 1; cut < lastLine; cut += 23) {
      tablet.folder.files.clear()
      tablet.folder.files.set(name, bytes.slice(0, bytes.length - cut))
      const page = await openPage(tablet)
      expect(await copyOf(page, 'batch:b')).toEqual(idsOf(b))
      expect(reportsOf(page).map((report) => report.code)).toEqual(['HEALED_JOURNAL', 'TORN_LINE'])
      await wait(0)
      page.kill()
    }
  })

  it('[S13] a line that no longer reads is kept to the letter, said, and written again from the database', async () => {
    const { a } = await recorded()
    const [name, bytes] = [...tablet.folder.files].find(([file]) => file.startsWith('page.')) ?? ['', new Uint8Array()]
    const damaged = bytes.slice()
    damaged[60] = 0x7e
    tablet.folder.files.set(name, damaged)
    const page = await openPage(tablet)
    expect(await copyOf(page, 'batch:a')).toEqual(idsOf(a))
    expect(reportsOf(page).map((report) => report.code)).toEqual(['HEALED_JOURNAL', 'DAMAGED_ENTRY'])
    await page.journal.merge()
    expect(new TextDecoder().decode(tablet.folder.files.get('unread.log'))).toContain('~')
  })

  it('[S14] both copies lost in turn, with a start between, lose nothing', async () => {
    const { a, b } = await recorded()
    for (let round = 0; round < 4; round++) {
      if (round % 2 === 0) loseDatabase()
      else loseJournal()
      const page = await openPage(tablet)
      expect(idsOf(await page.store.log.read('batch:a'))).toEqual(idsOf(a))
      expect(await copyOf(page, 'batch:b')).toEqual(idsOf(b))
      await vi.waitFor(async () => expect(await page.store.log.read('settings:storage')).toHaveLength(round + 1))
      page.kill()
    }
  })

  it('[S15] a database lost while a page is open is filled again before the page may use it', async () => {
    const { a } = await recorded()
    const page = await openPage(tablet)
    const db = whole(await page.store.connection.get())
    loseDatabase()
    db.close()
    const more = write('batch:a', 1, 'r1', { next: 5, lamport: 5, hash: a.at(-1)?.hash ?? null })
    expect(await page.store.log.append(request(more.events))).toEqual({ state: 'recorded' })
    expect(await page.store.log.read('batch:a')).toHaveLength(6)
  })

  it('[S15] nothing is appended before the database is known to hold what the journal holds', async () => {
    const { b } = await recorded()
    const first = await openPage(tablet)
    const db = whole(await first.store.connection.get())
    const row = await db.get('heads', 'batch:b')
    await db.delete('events', ['batch:b', 'r1', 2])
    if (row && b[1]) await db.put('heads', { ...row, count: 2, hash: b[1].hash, lamport: 2 })
    first.kill()
    const page = await openAtOnce(tablet)
    const rival = write('batch:b', 1, 'r1', { next: 2, lamport: 2, hash: b[1]?.hash ?? null }, 'rival').events
    expect(await page.store.log.append(request(rival))).toEqual({ state: 'conflict' })
    expect(idsOf(await page.store.log.read('batch:b'))).toEqual(idsOf(b))
  })

  it('[S16] an entry whose place is taken by another one is reported and kept in the journal, never written over', async () => {
    const { a } = await recorded()
    loseJournal()
    const other = write('batch:a', 1, 'r1', { next: 0, lamport: 0, hash: null }, 'other').events
    const writer = await openPage(tablet)
    await vi.waitFor(async () => expect(await copyOf(writer, 'settings:storage')).toHaveLength(1))
    await writer.journal.append(other.map((event) => JSON.stringify({ event })))
    writer.kill()
    const page = await openPage(tablet)
    expect(reportsOf(page)).toEqual([{ code: 'DAMAGED_ENTRY', entries: 1, streams: 0 }])
    expect(idsOf(await page.store.log.read('batch:a'))).toEqual(idsOf(a))
    expect((await page.store.log.read('batch:a'))[0]?.kind).toBe('noted')
    expect((await page.journal.read(['batch:a']))[0]).toHaveLength(6)
  })

  it('[S17] idle verification names entries whose content no longer has their hash, and drops none', async () => {
    await recorded()
    const page = await openPage(tablet)
    const db = whole(await page.store.connection.get())
    const [entry] = await page.store.log.read('batch:b')
    if (entry) await db.put('events', { ...entry, body: { text: 'changed' } }, ['batch:b', 'r1', 0])
    const found: string[] = []
    await verifyAll(page.store.connection, page.journal, (ids) => found.push(...ids))
    expect(found).toEqual([entry?.id])
    expect(await page.store.log.read('batch:b')).toHaveLength(3)
  })
})
