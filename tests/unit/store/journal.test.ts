import { describe, expect, it, vi } from 'vitest'
import { crc32, emptySum, mixSum } from '../../../src/store/checksum'
import { journalFiles } from '../../../src/store/journal-files'
import { decodeJournal, encodeLine, eventText } from '../../../src/store/journal-line'
import { pageLock } from '../../../src/store/locks'
import { idsOf, newTablet, type Tablet, write } from './support.ts'

const journalOf = (tablet: Tablet, pageId: string) =>
  journalFiles({ folder: tablet.folder, locks: tablet.locks, pageId, incarnation: '1', damagedOf: async () => [] })

/** A page that wrote its entries and is gone. */
async function gonePage(tablet: Tablet, pageId: string, stream: string, count: number) {
  const { events } = write(stream, count, pageId)
  await journalOf(tablet, pageId).append(events.map(eventText))
  tablet.folder.revive()
  return events
}

const read = async (tablet: Tablet, stream: string) =>
  idsOf((await journalOf(tablet, 'reader').read([stream]))[0] ?? []).toSorted()

describe('journal lines', () => {
  it('[S13] the checksum is CRC-32 as the standard has it', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe('cbf43926')
  })

  it('[S13] a line whose bytes changed anywhere is never read as an entry', () => {
    const line = encodeLine(eventText(write('batch:a', 1).events[0] as never))
    for (let at = 0; at < line.length - 1; at++) {
      const changed = line.slice()
      changed[at] = (changed[at] ?? 0) ^ 0x01
      expect(decodeJournal(changed).lines.length, `byte ${at}`).toBe(0)
    }
  })

  it('[S9] the digest of a set does not depend on order, and differs when one entry more is in it', () => {
    const hashes = write('batch:a', 4).events.map((event) => event.hash)
    const sum = hashes.reduce(mixSum, emptySum)
    expect(hashes.toReversed().reduce(mixSum, emptySum)).toBe(sum)
    expect(hashes.slice(1).reduce(mixSum, emptySum)).not.toBe(sum)
  })
})

describe('the own file', () => {
  it('[S57] is made with the first entry: a page that only looks whether the journal answers leaves none', async () => {
    const tablet = newTablet()
    const journal = journalOf(tablet, 'p1')
    await journal.table()
    await journal.probe()
    expect([...tablet.folder.files.keys()]).toEqual([])
    await journal.append(write('batch:a', 1).events.map(eventText))
    expect([...tablet.folder.files.keys()]).toEqual(['page.p1.1-0.log'])
    await journal.probe()
    expect([...tablet.folder.files.keys()]).toEqual(['page.p1.1-0.log'])
  })
})

describe('merging', () => {
  it('[S18] files of pages that are gone become segments, each line once, and the files go', async () => {
    const tablet = newTablet()
    const events = await gonePage(tablet, 'p1', 'batch:a', 4)
    await gonePage(tablet, 'p2', 'batch:b', 2)
    expect(await journalOf(tablet, 'p3').merge()).toBe(6)
    expect([...tablet.folder.files.keys()].filter((name) => name.startsWith('page.'))).toEqual([])
    expect(await read(tablet, 'batch:a')).toEqual(idsOf(events))
    expect((await journalOf(tablet, 'p4').table()).streams.map(({ stream, count }) => [stream, count])).toEqual([
      ['batch:a', 4],
      ['batch:b', 2],
    ])
  })

  it('[S18] the file of a page that still lives is read, and not touched', async () => {
    const tablet = newTablet()
    await tablet.locks.keep(pageLock('p1'))
    const events = await gonePage(tablet, 'p1', 'batch:a', 4)
    const before = tablet.folder.files.get('page.p1.1-0.log')
    expect(await journalOf(tablet, 'p2').merge()).toBe(0)
    expect(tablet.folder.files.get('page.p1.1-0.log')).toBe(before)
    expect(await read(tablet, 'batch:a')).toEqual(idsOf(events))
  })

  it('[S19] a merge cut off at any moment loses no line and counts none twice', async () => {
    const run = async (changes: number) => {
      const tablet = newTablet()
      await gonePage(tablet, 'p1', 'batch:a', 3)
      await journalOf(tablet, 'p2').merge()
      const a = await gonePage(tablet, 'p3', 'batch:a', 3)
      const b = await gonePage(tablet, 'p4', 'batch:b', 2)
      tablet.folder.dieAfter(changes)
      const finished = await journalOf(tablet, 'p5')
        .merge()
        .then(
          () => true,
          () => false,
        )
      tablet.folder.revive()
      for (const next of ['p6', 'p7']) {
        const rows = (await journalOf(tablet, next).table()).streams
        expect(Object.fromEntries(rows.map(({ stream, count }) => [stream, count])), `cut at ${changes}`).toEqual({
          'batch:a': 6,
          'batch:b': 2,
        })
        expect(await read(tablet, 'batch:b')).toEqual(idsOf(b))
        expect(await read(tablet, 'batch:a')).toEqual(expect.arrayContaining([...idsOf(a)]))
        await journalOf(tablet, next).merge()
        tablet.folder.revive()
      }
      return finished
    }
    let cut = 0
    while (!(await run(cut))) cut += 1
    expect(cut).toBeGreaterThan(5)
  })

  it('[S19] with one manifest damaged the other serves; with both, the packs are read line by line', async () => {
    const tablet = newTablet()
    await gonePage(tablet, 'p1', 'batch:a', 3)
    await journalOf(tablet, 'p2').merge()
    const events = await gonePage(tablet, 'p3', 'batch:b', 3)
    await journalOf(tablet, 'p4').merge()
    for (const slot of ['manifest-a', 'manifest-b']) {
      tablet.folder.files.get(slot)?.fill(0x20)
      const more = await gonePage(tablet, slot, 'batch:c', 1)
      await journalOf(tablet, `after ${slot}`).merge()
      tablet.folder.revive()
      expect(await read(tablet, 'batch:c')).toEqual(expect.arrayContaining([...idsOf(more)]))
    }
    for (const slot of ['manifest-a', 'manifest-b']) tablet.folder.files.get(slot)?.fill(0x20)
    expect(await read(tablet, 'batch:a')).toHaveLength(3)
    expect(await read(tablet, 'batch:b')).toEqual(idsOf(events))
    expect(await read(tablet, 'batch:c')).toHaveLength(2)
  })

  it('[S19] entries that two files both hold are one entry', async () => {
    const tablet = newTablet()
    const events = await gonePage(tablet, 'p1', 'batch:a', 3)
    await journalOf(tablet, 'p2').append(events.map(eventText))
    tablet.folder.revive()
    expect((await journalOf(tablet, 'p3').table()).streams).toEqual([
      { stream: 'batch:a', count: 3, sum: expect.any(String) },
    ])
    await journalOf(tablet, 'p3').merge()
    await journalOf(tablet, 'p4').append(events.map(eventText))
    tablet.folder.revive()
    await journalOf(tablet, 'p5').merge()
    expect((await journalOf(tablet, 'p6').table()).streams[0]?.count).toBe(3)
  })

  it('[S18] a page that writes much begins new files, and merges those it has left', async () => {
    const tablet = newTablet()
    await tablet.locks.keep(pageLock('p1'))
    const journal = journalOf(tablet, 'p1')
    const events = write('batch:a', 12).events.map((event) => ({ ...event, body: 'x'.repeat(1_000_000) }))
    for (const event of events) await journal.append([eventText(event)])
    await vi.waitFor(() =>
      expect([...tablet.folder.files.keys()].filter((name) => name.startsWith('page.')).length).toBeLessThan(2),
    )
    expect(tablet.folder.files.has('pack.0.log')).toBe(true)
    expect(await read(tablet, 'batch:a')).toEqual(idsOf(events).toSorted())
  })

  it('[S18] the file a page is writing is not merged, not even by that page', async () => {
    const tablet = newTablet()
    await tablet.locks.keep(pageLock('p1'))
    const journal = journalOf(tablet, 'p1')
    const { events } = write('batch:a', 2)
    await journal.append(events.slice(0, 1).map(eventText))
    expect(await journal.merge()).toBe(0)
    await journal.append(events.slice(1).map(eventText))
    expect(await read(tablet, 'batch:a')).toEqual(idsOf(events))
  })

  it('[S20] after a write that failed nothing is put behind it: the next line goes to another file', async () => {
    const tablet = newTablet()
    const journal = journalOf(tablet, 'p1')
    const { events } = write('batch:a', 3)
    await journal.append(events.slice(0, 1).map(eventText))
    tablet.folder.dieAfter(0)
    await expect(journal.append(events.slice(1, 2).map(eventText))).rejects.toThrow()
    tablet.folder.revive()
    await journal.append(events.slice(2).map(eventText))
    expect([...tablet.folder.files.keys()].length).toBe(2)
    expect(await read(tablet, 'batch:a')).toEqual(idsOf(events.filter((_, index) => index !== 1)))
  })
})
