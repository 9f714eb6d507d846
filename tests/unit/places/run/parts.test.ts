import { describe, expect, test } from 'vitest'
import { createFormat } from '../../../../src/app/format'
import type { Lot } from '../../../../src/batch/catalogue'
import type { BatchSummary } from '../../../../src/batch/summary'
import { panelOf } from '../../../../src/places/run/deviation-model'
import type { emptyDraft } from '../../../../src/places/run/draft'
import { lotChoices } from '../../../../src/places/run/lot-choices'
import { timersOf } from '../../../../src/places/run/timers'
import { createReckoner } from '../../../../src/places/run/typed'
import { wayLine, wayTitle } from '../../../../src/places/run/way-words'
import { netTyped } from '../../../../src/places/run/weigh-model'
import { grams } from '../../../support/batch'
import { openRun, settle, weigh } from './run-app'

const sums = createReckoner(async (text) =>
  text === '250.31-187.02' ? { ok: true, value: 63.29 } : { ok: false, refusal: { code: 'NUMBER_SUM_UNCLEAR', text } },
)
const draft = (mode: typeof emptyDraft.mode, fields: Record<string, string>) => ({ mode, fields })

describe('a figure with its unit', () => {
  const typed = async (text: string, dimension?: 'temperature' | 'viscosity') => {
    const reckoner = createReckoner()
    const read = () => reckoner.number(text, {}, dimension)
    for (let waited = 0; read().kind === 'reckoning' && waited < 100; waited += 1)
      await new Promise((resolve) => setTimeout(resolve, 10))
    return read()
  }

  test('[L14] is taken in the unit of its field', async () => {
    expect(await typed('167 °F', 'temperature')).toMatchObject({ kind: 'number', value: 75 })
    expect(await typed('38,6 C', 'temperature')).toMatchObject({ kind: 'number', value: 38.6 })
    expect(await typed('8 Pa·s', 'viscosity')).toMatchObject({ kind: 'number', value: 8_000 })
    expect(await typed('75', 'temperature')).toEqual({ kind: 'number', value: 75 })
  })

  test('[L14] is refused where the unit is none of that field, or the field has none', async () => {
    expect(await typed('75 min', 'temperature')).toMatchObject({
      kind: 'bad',
      refusal: { code: 'UNIT_UNKNOWN', unit: 'min' },
    })
    expect(await typed('75 °F')).toMatchObject({ kind: 'bad', refusal: { code: 'NUMBER_LETTERS' } })
  })
})

describe('a net mass', () => {
  test('[W23] is the reading itself where the pan was tared', () => {
    expect(netTyped(draft('re-tare', { reading: '1,83' }), sums, 0)).toMatchObject({ kind: 'net', netUg: grams(1.83) })
  })

  test('[W23] is what was added where the pan was not tared: after the last reading, or the one typed', () => {
    expect(netTyped(draft('cumulative', { reading: '21.87' }), sums, grams(20.04))).toMatchObject({
      netUg: grams(1.83),
    })
    expect(netTyped(draft('cumulative', { reading: '21.87', before: '20' }), sums, grams(20.04))).toMatchObject({
      netUg: grams(1.87),
    })
  })

  test('[W23] by difference is what left the container, and waits for the reading before', () => {
    expect(netTyped(draft('by-difference', { reading: '187.02' }), sums, 0)).toEqual({
      kind: 'wanted',
      field: 'before',
    })
    expect(netTyped(draft('by-difference', { before: '250.31', reading: '187.02' }), sums, 0)).toMatchObject({
      netUg: grams(63.29),
    })
  })

  test('[W23] that would not be more than nothing is refused at its field', () => {
    const net = netTyped(draft('by-difference', { before: '187.02', reading: '250.31' }), sums, 0)
    expect(net).toMatchObject({ kind: 'bad', field: 'reading', refusal: { code: 'NET_NOT_POSITIVE' } })
    expect(netTyped(draft('re-tare', { reading: 'abc' }), sums, 0)).toMatchObject({
      refusal: { code: 'NUMBER_LETTERS' },
    })
    expect(netTyped(draft('re-tare', { reading: '1.8.3' }), sums, 0)).toMatchObject({
      refusal: { code: 'NUMBER_TWO_MARKS' },
    })
  })

  test('[W23] of a typed sum is there once the arithmetic is, with the sum beside it', async () => {
    const typed = draft('re-tare', { reading: '250.31-187.02' })
    expect(netTyped(typed, sums, 0)).toEqual({ kind: 'reckoning' })
    await settle()
    expect(netTyped(typed, sums, 0)).toMatchObject({ netUg: grams(63.29), sum: '250.31-187.02' })
  })
})

describe('timers on the strip', () => {
  test('[T40] are those of every batch, the next to ring first, and name a batch only where it is another one', async () => {
    const { handle, run, clock } = await openRun()
    await run.act({ do: 'start-timer', label: 'Hydrate', minutes: 20 })
    const other = {
      id: 'two',
      shortName: 'Gel 017',
      timers: [{ id: 't', label: 'Stand', deadlineAtMs: clock.nowMs() - 31_000 }],
    } as unknown as BatchSummary
    const facts = timersOf(handle.view.value.state, 'one', [other], clock.nowMs())
    expect(facts.map(({ batchName, label, ringing, leftMs }) => [batchName, label, ringing, leftMs])).toEqual([
      ['Gel 017', 'Stand', true, -31_000],
      [undefined, 'Hydrate', false, 20 * 60_000],
    ])
  })
})

describe('lots to choose from', () => {
  const lot = (id: string, more: Partial<Lot>): Lot => ({
    id,
    code: id,
    materialId: 'm',
    receivedUg: grams(100),
    status: 'released',
    ...more,
  })

  test('[G40] stand oldest usable first; expired, quarantined and short ones are called out', () => {
    const lots = [
      lot('late', { expires: '2027-05-01' }),
      lot('expired', { expires: '2026-11-23' }),
      lot('early', { expires: '2026-11-24' }),
      lot('shut', { status: 'quarantine' }),
      lot('short', { expires: '2026-12-01' }),
    ]
    const onHand = new Map(lots.map(({ id }) => [id, id === 'short' ? grams(1) : grams(100)]))
    expect(lotChoices(lots, onHand, grams(5), '2026-11-24').map((each) => [each.lot.id, each.trouble])).toEqual([
      ['early', null],
      ['late', null],
      ['short', 'short'],
      ['expired', 'expired'],
      ['shut', 'quarantine'],
    ])
  })
})

describe('a way on', () => {
  test('[R41] says its consequence in one line of 52 signs at most, or why it cannot be', async () => {
    const { run, handle } = await openRun()
    await weigh(run, '360')
    const panel = panelOf(run)
    if (panel === null) throw new Error('no deviation is open')
    const format = createFormat('.', 'en')
    for (const way of panel.ways) {
      const line = wayLine(way, panel, handle.view.value.state, format)
      expect(line.length).toBeLessThanOrEqual(52)
      expect(line.startsWith('Cannot: ')).toBe(!way.feasible)
      expect(wayTitle(way, handle.view.value.state, format)).not.toBe('')
    }
  })
})
