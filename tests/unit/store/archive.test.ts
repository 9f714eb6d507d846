import 'fake-indexeddb/auto'
import { createHash } from 'node:crypto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Event } from '../../../src/batch/event'
import { seal } from '../../../src/batch/seal'
import { emptyTip } from '../../../src/batch/tip'
import { idsOf, newTablet, type OpenPage, openPage, request, write } from './support.ts'

const madeAt = '2026-03-02T18:00:00.000+01:00'
let page: OpenPage
beforeEach(async () => {
  page = await freshPage()
})

async function freshPage(): Promise<OpenPage> {
  vi.stubGlobal('indexedDB', new IDBFactory())
  return openPage(newTablet())
}

const a = write('batch:a', 3).events
const b = write('batch:b', 2, 'r1', undefined, 'a-kind-of-tomorrow').events

async function archiveOf(streams: readonly string[] | 'all'): Promise<string> {
  for (const events of [b, a]) await page.store.log.append(request(events))
  return (await written(page, streams)).text()
}

async function written({ store }: OpenPage, streams: readonly string[] | 'all'): Promise<Blob> {
  const answer = await (await store.archive()).write(streams, madeAt)
  if (!answer.ok) throw new Error(answer.refusal.code)
  return answer.value.file
}

/** A file with these lines and the right digest for them. */
function fileOf(events: readonly object[], header: object = {}): Blob {
  const lines = events.map((event) => `${JSON.stringify(event)}\n`).join('')
  const sha256 = createHash('sha256').update(lines).digest('hex')
  const streams = new Set(events.map((event) => ('stream' in event ? event.stream : ''))).size
  const first = { format: 'pannikin', version: 1, madeAt, streams, events: events.length, sha256, ...header }
  return new Blob([`${JSON.stringify(first)}\n${lines}`])
}

const refusalOf = async (file: Blob) => {
  const answer = await (await page.store.archive()).apply(file)
  return answer.ok ? answer.value : answer.refusal
}

describe('the archive', () => {
  it('[I1] a file has a header with counts and digest, then entries by stream and fold order', async () => {
    const [header, ...lines] = (await archiveOf('all')).split('\n')
    const body = `${lines.slice(0, -1).join('\n')}\n`
    expect(JSON.parse(header ?? '')).toEqual({
      format: 'pannikin',
      version: 1,
      madeAt,
      streams: 2,
      events: 5,
      sha256: createHash('sha256').update(body).digest('hex'),
      own: expect.stringMatching(/^[0-9a-f]{64}$/),
    })
    expect(lines.slice(0, -1).map((line) => JSON.parse(line).id)).toEqual(idsOf([...a, ...b]))
  })

  it('[I2] what left one tablet comes to another in both copies, unknown kinds and all, and a second time changes nothing', async () => {
    const file = new Blob([await archiveOf('all')])
    const there = await freshPage()
    const expected = { fresh: 5, same: 0, conflicting: 0, streams: ['batch:a', 'batch:b'] }
    expect(await (await there.store.archive()).inspect(file)).toMatchObject({ ok: true, value: expected })
    expect(await there.store.log.read('batch:a')).toEqual([])
    expect(await (await there.store.archive()).apply(file)).toMatchObject({ ok: true, value: expected })
    expect(await there.store.log.read('batch:b')).toEqual(b)
    expect((await there.journal.table()).streams.map((row) => row.count)).toEqual([3, 2])
    expect((await there.store.log.head('batch:a'))?.count).toBe(3)
    expect(await (await there.store.archive()).apply(file)).toMatchObject({ ok: true, value: { fresh: 0, same: 5 } })
    expect(await (await written(there, 'all')).text()).toBe(await file.text())
  })

  it('[I2] only the streams asked for leave', async () => {
    expect((await archiveOf(['batch:b', 'batch:none'])).split('\n')).toHaveLength(4)
  })

  it('[I3] an entry whose place holds another one is counted as conflicting and overwrites nothing', async () => {
    await page.store.log.append(request(a))
    const rival = write('batch:a', 1, 'r1', undefined, 'rival').events
    expect(await refusalOf(fileOf(rival))).toMatchObject({ fresh: 0, same: 0, conflicting: 1 })
    expect((await page.store.log.read('batch:a'))[0]?.kind).toBe('noted')
  })

  it('[I4] a file cut off anywhere is refused, and nothing of it is applied', async () => {
    const text = await archiveOf('all')
    page = await freshPage()
    for (let cut = 1; cut < text.length - 2; cut += 97) {
      const answer = await (await page.store.archive()).apply(new Blob([text.slice(0, -cut - 1)]))
      expect(answer.ok, `cut by ${cut}`).toBe(false)
    }
    expect(await refusalOf(new Blob([`${text.trimEnd().split('\n').slice(0, 4).join('\n')}\n`]))).toEqual({
      code: 'FILE_CUT',
      expected: 5,
      found: 3,
    })
    expect(await page.store.log.heads({ family: 'batch' })).toEqual([])
  })

  it('[I4] one changed byte anywhere is noticed, and nothing is applied', async () => {
    const text = await archiveOf('all')
    page = await freshPage()
    const bytes = new TextEncoder().encode(text)
    const from = bytes.indexOf(0x0a) + 1
    for (let at = from; at < bytes.length - 1; at += 53) {
      const changed = bytes.slice()
      changed[at] = changed[at] === 0x33 ? 0x34 : 0x33
      expect((await (await page.store.archive()).apply(new Blob([changed]))).ok, `byte ${at}`).toBe(false)
    }
    expect(await page.store.log.heads({ family: 'batch' })).toEqual([])
  })

  it('[I5] each kind of bad file has its own code', async () => {
    const [first] = a as [Event]
    const wide = { ...first, body: 'x'.repeat(1024 * 1024) }
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`
    const entryOne = { number: 1, of: 'batch:a', kind: 'noted' }
    const files: readonly (readonly [Blob, object])[] = [
      [new Blob(['']), { code: 'FILE_FOREIGN' }],
      [new Blob(['code;name\n1;2\n']), { code: 'FILE_FOREIGN' }],
      [new Blob([new Uint8Array([0xff, 0xfe, 0x00, 0x0a])]), { code: 'FILE_FOREIGN' }],
      [new Blob(['{"format":"other","version":1}\n']), { code: 'FILE_FOREIGN' }],
      [fileOf(a, { version: 2 }), { code: 'FILE_NEWER', version: 2 }],
      [fileOf(a, { sha256: 'no' }), { code: 'FILE_DAMAGED', line: 1 }],
      [fileOf(a, { sha256: '0'.repeat(64) }), { code: 'FILE_DAMAGED', line: 1 }],
      [fileOf(a, { streams: 7 }), { code: 'FILE_DAMAGED', line: 1 }],
      [fileOf([{ ...first, body: 'changed' }]), { code: 'FILE_DAMAGED', line: 2, entry: entryOne }],
      [fileOf([{ ...first, n: -1 }]), { code: 'FILE_DAMAGED', line: 2, entry: { ...entryOne, field: 'n' } }],
      [
        fileOf([{ ...first, stream: 'nofamily' }]),
        { code: 'FILE_DAMAGED', line: 2, entry: { ...entryOne, of: 'nofamily', field: 'stream' } },
      ],
      [fileOf([...b, ...a]), { code: 'FILE_DAMAGED', line: 4 }],
      [fileOf([...a].reverse()), { code: 'FILE_DAMAGED', line: 3 }],
      [fileOf([wide]), { code: 'FILE_DAMAGED', line: 2 }],
      [
        new Blob([await fileOf(a).text(), deep]),
        { code: 'FILE_DAMAGED', line: 5, entry: { number: 4, of: 'batch:a', kind: 'unreadable' } },
      ],
    ]
    for (const [file, refusal] of files) expect(await refusalOf(file)).toEqual(refusal)
    const huge = Object.defineProperty(fileOf(a), 'size', { value: 2 ** 30 })
    expect(await refusalOf(huge)).toEqual({ code: 'FILE_TOO_LARGE', bytes: 2 ** 30 })
    expect(await page.store.log.heads({ family: 'batch' })).toEqual([])
  })

  it('[E86] a changed entry is named by its number and kind, and its field where the same entry is here', async () => {
    const [one, two, three] = a as [Event, Event, Event]
    const other = { ...two, source: { kind: 'balance' } }
    const where = { number: 2, of: 'batch:a', kind: 'noted' }
    expect(await refusalOf(fileOf([one, other, three]))).toEqual({ code: 'FILE_DAMAGED', line: 3, entry: where })
    await page.store.log.append(request(a))
    expect(await refusalOf(fileOf([one, other, three]))).toEqual({
      code: 'FILE_DAMAGED',
      line: 3,
      entry: { ...where, field: 'source.kind' },
    })
    const sealed = seal({ kind: 'weighed', body: { netUg: 'much' } }, emptyTip, {
      stream: 'batch:z',
      replica: 'r',
      id: 'z-1',
      at: madeAt,
      by: 'person-rk',
    })
    expect(await refusalOf(fileOf([sealed]))).toMatchObject({
      line: 2,
      entry: { number: 1, of: 'batch:z', kind: 'weighed', field: expect.stringMatching(/^body\./) },
    })
  })

  it('[E86] an entry that was taken out of a file, digest and all, is told, unless it is here', async () => {
    const [one, , three] = a as [Event, Event, Event]
    expect(await (await page.store.archive()).inspect(fileOf([one, three]))).toMatchObject({
      value: { gaps: [{ of: 'batch:a', number: 2 }] },
    })
    await page.store.log.append(request(a))
    expect(await (await page.store.archive()).inspect(fileOf([one, three]))).toMatchObject({ value: { gaps: [] } })
  })

  it('[E86] both copies of a stream can be read beside each other', async () => {
    await page.store.log.append(request(a))
    expect(await (await page.store.archive()).secondCopy('batch:a')).toEqual(await page.store.log.read('batch:a'))
    page.journal.breakDown()
    expect(await (await page.store.archive()).secondCopy('batch:a')).toBeNull()
  })

  it('[I5] full storage is said in the result, and importing again afterwards completes it', async () => {
    const file = new Blob([await archiveOf('all')])
    page = await freshPage()
    const full = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError')
    })
    expect(await refusalOf(file)).toEqual({ code: 'STORAGE_FULL' })
    full.mockRestore()
    expect(await refusalOf(file)).toMatchObject({ fresh: 5 })
    expect(await page.store.log.read('batch:a')).toEqual(a)
  })
})
