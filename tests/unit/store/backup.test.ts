import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { fileOf, holding, madeAt, many, previewOf } from './shelves.ts'
import { newTablet, type OpenPage, openPage, request, write } from './support.ts'

const a = write('batch:a', 4)
const lot = write('lot:l', 2)

describe('a backup', () => {
  it('[I70] is read back before it leaves, and says how many entries of how many batches stand in it', async () => {
    const { archive } = holding(a.events, lot.events)
    const told: number[] = []
    const answer = await archive.write('all', madeAt, { onProgress: (fraction) => told.push(fraction) })
    expect(answer).toMatchObject({ ok: true, value: { entries: 6, streams: 2, batches: 1, leftOut: 0 } })
    expect(told.at(-1)).toBe(1)
    expect([...told].sort((one, other) => one - other)).toEqual(told)
  })

  it('[I70] that does not read back as it was written is none', async () => {
    const { archive } = holding(a.events)
    const slice = vi.spyOn(Blob.prototype, 'slice').mockReturnValue(new Blob(['something else\n']))
    expect(await archive.write('all', madeAt)).toMatchObject({ ok: false, refusal: { code: 'FILE_NOT_VERIFIED' } })
    slice.mockRestore()
  })

  it('[I70] leaves damaged entries out, counts them, and comes back whole otherwise', async () => {
    const damaged = a.events.map((event, index) => (index === 3 ? { ...event, body: { text: 'changed' } } : event))
    const { archive } = holding(damaged, lot.events)
    const answer = await archive.write('all', madeAt)
    expect(answer).toMatchObject({ ok: true, value: { entries: 5, leftOut: 1 } })
    if (!answer.ok) return
    const there = holding()
    expect(await there.archive.apply(answer.value.file)).toMatchObject({ ok: true, value: { fresh: 5 } })
  })

  it('[I74] that is stopped is no file', async () => {
    const { archive } = holding(a.events)
    const stop = new AbortController()
    stop.abort()
    expect(await archive.write('all', madeAt, { signal: stop.signal })).toMatchObject({
      ok: false,
      refusal: { code: 'STOPPED', done: 0 },
    })
  })
})

describe('what a file would bring', () => {
  const longer = [...a.events, ...write('batch:a', 2, 'r1', a.tip).events]
  const elsewhere = [...a.events, ...write('batch:a', 1, 'r2', { ...a.tip, next: 0 }).events]

  it('[I71] is told by kind: not here, longer in the file, the same, differing', async () => {
    const file = await fileOf(holding(longer, write('batch:b', 1).events, lot.events).archive)
    const preview = await previewOf(holding(a.events, lot.events).archive, file)
    expect(preview.kinds).toEqual([
      { kind: 'batch', fresh: 1, longer: 1, same: 0, meeting: 0 },
      { kind: 'lot', fresh: 0, longer: 0, same: 1, meeting: 0 },
    ])
    expect(preview).toMatchObject({ fresh: 3, same: 6, conflicting: 0, meetings: [] })
    const older = await previewOf(holding(longer).archive, await fileOf(holding(a.events).archive))
    expect(older.kinds).toEqual([{ kind: 'batch', fresh: 0, longer: 0, same: 1, meeting: 0 }])
  })

  it('[I72] names what went on in both, and says which of them comes last', async () => {
    const here = holding(longer)
    const preview = await previewOf(here.archive, await fileOf(holding(elsewhere).archive))
    expect(preview.meetings).toEqual([
      expect.objectContaining({ stream: 'batch:a', how: 'both', fresh: 1, staysOut: 0, fileIsLast: false }),
    ])
    await here.archive.apply(await fileOf(holding(elsewhere).archive))
    expect(here.streams.get('batch:a')).toHaveLength(7)
    const other = await previewOf(holding(elsewhere).archive, await fileOf(holding(longer).archive))
    expect(other.meetings).toMatchObject([{ how: 'both', fresh: 2, fileIsLast: true }])
  })

  it('[I72] an entry whose place is taken stays out, with all that follows on it, and so nothing follows on nothing', async () => {
    const rival = write('batch:a', 1, 'r1', { ...a.tip, next: 4 }, 'rival')
    const after = write('batch:a', 2, 'r3', { ...rival.tip, next: 0 })
    const theirs = [...a.events, ...rival.events, ...after.events]
    const here = holding(longer)
    const file = await fileOf(holding(theirs).archive)
    const preview = await previewOf(here.archive, file)
    expect(preview).toMatchObject({ fresh: 0, same: 4, conflicting: 3 })
    expect(preview.meetings).toMatchObject([{ stream: 'batch:a', how: 'conflict', staysOut: 3 }])
    await here.archive.apply(file)
    expect(here.streams.get('batch:a')).toEqual(longer)
  })
})

describe('thousands of batches', () => {
  it('[I75] leave and come back through pieces of one size, however many they are', async () => {
    const logs = many(5_000, 2)
    const here = holding(...logs)
    const pieces: number[] = []
    const Whole = Blob
    vi.stubGlobal(
      'Blob',
      class extends Whole {
        constructor(parts: BlobPart[] = [], options?: BlobPropertyBag) {
          super(parts, options)
          for (const part of parts) if (typeof part === 'string') pieces.push(part.length)
        }
      },
    )
    const file = await fileOf(here.archive)
    vi.stubGlobal('Blob', Whole)
    expect(file.size).toBeGreaterThan(3_000_000)
    expect(Math.max(...pieces)).toBeLessThan(1_010_000)
    const there = holding()
    expect(await there.archive.apply(file)).toMatchObject({ ok: true, value: { fresh: 10_000 } })
    expect(there.seen.largest).toBeLessThanOrEqual(2_002)
    expect([...there.streams.values()]).toEqual([...here.streams.values()])
  }, 60_000)
})

describe('a tablet after a file came in', () => {
  let page: OpenPage
  beforeEach(async () => {
    vi.stubGlobal('indexedDB', new IDBFactory())
    page = await openPage(newTablet())
  })

  it('[S54] writes as a new replica, also after a restart; a file with nothing new changes nothing', async () => {
    const before = page.store.log.replica
    const file = await fileOf(holding(a.events).archive)
    const archive = await page.store.archive()
    await archive.apply(file)
    const { replica } = page.store.log
    expect(replica).not.toBe(before)
    expect(await page.store.connection.run((db) => db.get('meta', 'replica'))).toBe(replica)
    await archive.apply(file)
    expect(page.store.log.replica).toBe(replica)
    const next = write('batch:a', 1, replica, { ...a.tip, next: 0 }).events
    expect(await page.store.log.append(request(next))).toEqual({ state: 'recorded' })
  })
})
