import { signal } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import type { App } from '../../../../src/app/app.ts'
import type { BatchSummary } from '../../../../src/batch/summary.ts'
import { finder, type Sieve } from '../../../../src/places/records/find.ts'
import { createRecordsModel, pageSize } from '../../../../src/places/records/model.ts'

const summary = (number: number, more: Partial<BatchSummary> = {}): BatchSummary => ({
  id: `b${number}`,
  code: `QW-LOT-01-${String(number).padStart(3, '0')}`,
  shortName: `Lotion ${number}`,
  formulaId: 'f',
  formulaName: 'Oat barrier body lotion',
  revision: 3,
  totalUg: 500_000_000,
  stage: 'closed',
  openedAtMs: number,
  touchedAtMs: number * 1000,
  person: 'p',
  decision: 'accept',
  done: 1,
  steps: 1,
  cup: { strata: [], targetUg: 1 },
  timers: [],
  checksDue: [],
  openDeviations: 0,
  deviations: 0,
  doubts: 0,
  usedByLot: [],
  ...more,
})

/** An app whose finished batches are numbered from the newest down; `reads` counts the pages asked for. */
function appOf(count: number, inHand: readonly BatchSummary[] = []) {
  const all = Array.from({ length: count }, (_, index) => summary(count - index))
  let reads = 0
  const finished = async (limit: number, before?: string): Promise<readonly BatchSummary[]> => {
    reads += 1
    const beforeMs = before === undefined ? Number.POSITIVE_INFINITY : Date.parse(before)
    return all.filter((each) => each.touchedAtMs < beforeMs).slice(0, limit)
  }
  const lot = { id: 'lot-a', code: 'SQ-115' }
  const catalogue = {
    lots: signal(new Map([['lot-a', lot]])),
    people: signal(new Map([['p', { initials: 'RK', name: 'Rhona Kestevan' }]])),
  }
  const app = { batches: { inHand: signal(inHand), finished }, catalogue }
  // The model uses nothing else of the app.
  return { app: app as unknown as App, reads: () => reads }
}

describe('the list of records', () => {
  test('reads a page at a time, newest first, until there is no more', async () => {
    const { app, reads } = appOf(pageSize + 20)
    const model = createRecordsModel(app)
    await model.readMore()
    expect(model.finished.value).toHaveLength(pageSize)
    expect(model.finished.value[0]?.id).toBe(`b${pageSize + 20}`)
    expect(model.more.value).toBe(true)
    await model.readMore()
    expect(model.finished.value).toHaveLength(pageSize + 20)
    expect(model.more.value).toBe(false)
    expect(reads()).toBe(2)
  })

  test('what was brought in meanwhile stands there once it is read again, and no row goes', async () => {
    const { app } = appOf(pageSize + 20)
    const model = createRecordsModel(app)
    await model.readMore()
    await model.readMore()
    const grown = appOf(pageSize + 30)
    Object.assign(app.batches, { finished: grown.app.batches.finished })
    model.readAgain()
    await new Promise((resolve) => setTimeout(resolve))
    expect(model.finished.value).toHaveLength(pageSize + 20)
    expect(model.finished.value[0]?.id).toBe(`b${pageSize + 30}`)
    expect(model.more.value).toBe(true)
  })

  test('a search reads on into older pages until it has found what it looks for', async () => {
    const { app } = appOf(4 * pageSize)
    const model = createRecordsModel(app)
    await model.readMore()
    model.setSearch('lot-01-007')
    await expect.poll(() => model.finished.value.map(({ id }) => id)).toEqual(['b7'])
  })

  test('a batch in hand stands in its own list and not among the finished ones', async () => {
    const { app } = appOf(3, [summary(2, { stage: 'in-hand' })])
    const model = createRecordsModel(app)
    await model.readMore()
    expect(model.inHand.value.map(({ id }) => id)).toEqual(['b2'])
    expect(model.finished.value.map(({ id }) => id)).toEqual(['b3', 'b1'])
  })

  test('[S55] of thousands no more rows stand there than were asked for, searched or not', async () => {
    const { app } = appOf(5_000)
    const model = createRecordsModel(app)
    await model.readMore()
    model.setSearch('lotion')
    await expect.poll(() => model.reading.value).toBe(false)
    expect(model.finished.value).toHaveLength(pageSize)
    model.setSearch('')
    expect(model.finished.value).toHaveLength(pageSize)
    await model.readMore()
    expect(model.finished.value).toHaveLength(2 * pageSize)
    expect(model.more.value).toBe(true)
  })

  test('[S55] what is looked for is found among all of them in one reading, however often letters are added', async () => {
    const { app, reads } = appOf(5_000)
    const model = createRecordsModel(app)
    await model.readMore()
    for (const text of ['0', '00', '001', '0012', 'lot-01-0012']) model.setSearch(text)
    await expect.poll(() => model.reading.value).toBe(false)
    model.setSearch('lot-01-4712')
    expect(model.finished.value.map(({ id }) => id)).toEqual(['b4712'])
    expect(reads()).toBeLessThanOrEqual(3)
  })

  const wanted = (summaryOf: BatchSummary, words: string, sieve: Sieve = 'all') =>
    finder(appOf(0).app.catalogue)(summaryOf, { words, sieve })

  test('[S56] every typed word must stand in the code, the names, the revision, the decision or how it stands', () => {
    expect(wanted(summary(9), 'oat 009')).toBe(true)
    expect(wanted(summary(9), 'r3 accept')).toBe(true)
    expect(wanted(summary(9), 'accepted')).toBe(true)
    expect(wanted(summary(9), 'oat 010')).toBe(false)
    expect(wanted(summary(9), '')).toBe(true)
  })

  test('[S56] a batch is found by a lot that went in, by its person and by a day, written either way', () => {
    const day = Date.UTC(2026, 10, 24, 12)
    const one = summary(9, { usedByLot: [{ lot: 'lot-a', massUg: 1 }], openedAtMs: day })
    expect(wanted(one, 'sq-115')).toBe(true)
    expect(wanted(one, 'rk kestevan')).toBe(true)
    expect(wanted(one, '2026-11-24')).toBe(true)
    expect(wanted(one, '2026-11')).toBe(true)
    expect(wanted(summary(9), 'sq-115')).toBe(false)
    expect(wanted(summary(9, { openedAtMs: day, person: 'gone' }), 'rk')).toBe(false)
  })

  test('[S56] what is to be looked at and what did not go as planned are sifted out', () => {
    const held = summary(1, { decision: 'hold' })
    const due = summary(2, { checksDue: [{ check: 'v', label: 'viscosity', dueAtMs: 0 }] })
    const off = summary(3, { deviations: 1 })
    const fine = summary(4)
    const all = [held, due, off, fine]
    expect(all.filter((each) => wanted(each, '', 'to-do'))).toEqual([held, due])
    expect(all.filter((each) => wanted(each, '', 'off-plan'))).toEqual([off])
  })
})
