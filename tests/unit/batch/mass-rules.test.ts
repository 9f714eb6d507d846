import { describe, expect, test } from 'vitest'
import type { Intention } from '../../../src/batch/intention'
import { adjustCurves, heatCurves } from '../../../src/batch/record-curves'
import { grams, openTestBench } from '../../support/batch'
import { benchWith, own } from '../../support/few-steps'
import { lotionHeader, withLots } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const combine = (more: { step?: string; residueUg?: number; rinseUg?: number } = {}): Intention => ({
  do: 'combine',
  step: own,
  residueUg: 0,
  rinseUg: 0,
  ...more,
})

describe('[L5] a vessel is not emptied', () => {
  test('by a step that is not there, is of another kind or is done', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    expect(bench.refusal(combine({ step: 'none-such' }))).toEqual({ code: 'NO_SUCH_STEP', step: 'none-such' })
    expect(bench.refusal({ ...combine(), do: 'charge' } as Intention)).toEqual({
      code: 'NOT_FOR_THIS_STEP',
      step: own,
    })
    bench.combine(own)
    expect(bench.refusal(combine())).toEqual({ code: 'STEP_DONE', step: own })
  })

  test('with more left behind than it held with its rinse, nor rinsed with more than is held back', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    const { heldBackUg } = bench.state
    expect(heldBackUg).toBeGreaterThan(0)
    expect(bench.refusal(combine({ rinseUg: heldBackUg + 1 }))).toEqual({
      code: 'RINSE_ABOVE_HELD_BACK',
      rinseUg: heldBackUg + 1,
      heldBackUg,
    })
    expect(bench.refusal(combine({ residueUg: grams(15) + 1 }))).toEqual({
      code: 'MORE_THAN_HELD',
      askedUg: grams(15) + 1,
      heldUg: grams(15),
    })
    expect(bench.refusal(combine({ residueUg: grams(16) + 1, rinseUg: grams(1) }))).toMatchObject({ heldUg: grams(16) })
    for (const bad of [{ residueUg: -1 }, { rinseUg: -1 }]) expect(bench.refusal(combine(bad)).code).toMatch(/MASS/)
    const [moved] = bench.intend(combine({ residueUg: grams(15) + heldBackUg, rinseUg: heldBackUg }))
    expect(moved).toMatchObject({
      kind: 'transferred',
      body: { step: own, from: 'oil', to: 'main', rinseUg: heldBackUg, rinseLine: 'aqua' },
    })
  })

  test('and without a rinse no line gives one', () => {
    const bench = benchWith({ kind: 'charge', cup: 'oil', rate: 'stream' })
    const [charged] = bench.intend({ do: 'charge', step: own, residueUg: 0, rinseUg: 0 })
    expect(charged?.body).toEqual({ step: own, from: 'oil', to: 'main', residueUg: 0, rinseUg: 0 })
  })
})

describe('[W6] a vessel is thrown away', () => {
  test('only where it is there, holds something, and with a reason', () => {
    const bench = benchWith({ kind: 'clean' })
    const away = (vessel: string, reason: string): Intention => ({ do: 'discard-cup', vessel, reason })
    expect(bench.refusal(away('pot', 'wet'))).toEqual({ code: 'UNKNOWN_VESSEL_HERE', vessel: 'pot' })
    expect(bench.refusal(away('slurry', 'wet'))).toEqual({ code: 'NOTHING_WEIGHED' })
    expect(bench.refusal(away('oil', '  '))).toEqual({ code: 'REASON_MISSING' })
    const [gone] = bench.intend(away('oil', 'wet'))
    expect(gone).toMatchObject({ kind: 'discarded', body: { vessel: 'oil', massUg: 'all', reason: 'wet' } })
  })
})

describe('[R30] what is not in the plan', () => {
  test('goes in by its name, into the vessel that holds it now, with what is known of it and nothing else', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    bench.combine(own)
    const oat = { do: 'add-unplanned', name: ' Oat ', vessel: 'oil', netUg: grams(1), reason: ' softer ' } as const
    expect(bench.refusal({ ...oat, name: ' ' })).toEqual({ code: 'NAME_MISSING' })
    expect(bench.refusal({ ...oat, netUg: 0 }).code).toMatch(/MASS/)
    const [bare] = bench.intend(oat)
    const body = { name: 'Oat', vessel: 'main', netUg: grams(1), reason: 'softer' }
    expect(bare?.body).toEqual({ ...body, component: `unplanned:${bare?.id}` })
    const known = { materialId: 'colloidal-oat', lot: 'lot-oa-077', most: 0.1 }
    const [whole] = bench.intend({ ...oat, ...known })
    expect(whole?.body).toEqual({ ...body, ...known, component: `unplanned:${whole?.id}` })
  })
})

describe('[G6] an adjuster', () => {
  const acid = { kind: 'adjust', property: 'pH', line: 'lactic-acid-10', check: 'ph' } as const
  const add = (more: object = {}): Intention => ({ do: 'adjust', step: own, netUg: grams('0.8'), ...more })

  test('goes in at its step alone, from a lot that is its own', () => {
    const bench = benchWith(acid)
    expect(bench.refusal(add({ step: 'none-such' }))).toEqual({ code: 'NO_SUCH_STEP', step: 'none-such' })
    expect(bench.refusal(add({ step: 'a-water' }))).toEqual({ code: 'NOT_FOR_THIS_STEP', step: 'a-water' })
    expect(bench.refusal(add({ lot: 'lot-sq-115' }))).toEqual({
      code: 'OTHER_MATERIAL',
      lot: 'lot-sq-115',
      line: 'Lactic acid 10 %',
    })
    expect(bench.refusal(add({ netUg: 0 })).code).toMatch(/MASS/)
    const [added] = bench.intend(add())
    expect(added?.body).toMatchObject({ step: own, line: 'lactic-acid-10', vessel: 'main', netUg: grams('0.8') })
  })

  test('goes in without a lot where the studio has none of it', () => {
    const bench = openTestBench(withLots(lotionHeader(), 'lactic-acid-10', () => []))
    runUpTo(bench, 'adjust-ph')
    const [added] = bench.intend(add({ step: 'adjust-ph' }))
    expect(added?.body).not.toHaveProperty('lot')
  })

  test('asks above its most, counting what went in before, and not at it', () => {
    const bench = benchWith(acid)
    // 1.5 % of 500 g.
    bench.intend(add({ netUg: grams('7') }))
    expect(bench.refusal(add({ netUg: grams('0.501') }))).toEqual({
      code: 'GATE',
      gates: [
        {
          code: 'ABOVE_MAXIMUM',
          key: 'ABOVE_MAXIMUM',
          passable: true,
          massUg: grams('7.501'),
          mostUg: grams('7.5'),
        },
      ],
    })
    bench.intend(add({ netUg: grams('0.5') }))
    expect(bench.massIn('main')).toBe(bench.step('a-water').netUg + grams('7.5'))
  })

  test('[E68] its curve has each reading over what had gone in by then, without what was struck out', () => {
    const bench = benchWith(acid)
    expect(adjustCurves(bench.state)).toEqual([])
    const read = (value: number) => {
      bench.wait(1)
      bench.measure({ step: own, check: 'ph', value })
      return bench.nowMs
    }
    const moments = [read(6.2)]
    bench.intend(add())
    moments.push(read(5.6))
    const [slip] = bench.intend(add())
    bench.strike(slip?.id ?? '')
    read(5)
    bench.strike(bench.events.at(-1)?.id ?? '')
    bench.measure({ step: own, check: 'ph-rested', value: 5 })
    bench.measure({ check: 'ph', value: 5 })
    bench.intend(add({ netUg: grams('0.4') }))
    moments.push(read(5.1))
    expect(adjustCurves(bench.state)).toEqual([
      {
        step: own,
        property: 'pH',
        adjuster: 'Lactic acid 10 %',
        check: bench.state.header.revision.specification.find(({ id }) => id === 'ph'),
        points: [
          { atMs: moments[0], addedUg: 0, value: 6.2 },
          { atMs: moments[1], addedUg: grams('0.8'), value: 5.6 },
          { atMs: moments[2], addedUg: grams('1.2'), value: 5.1 },
        ],
      },
    ])
  })

  test('[E68] a heat curve has two readings at least that were not struck out', () => {
    const bench = benchWith(acid)
    bench.read('main', 30)
    bench.read('main', 90)
    bench.strike(bench.events.at(-1)?.id ?? '')
    bench.read('oil', 20)
    expect(heatCurves(bench.state)).toEqual([])
    bench.wait(5)
    bench.read('main', 40)
    expect(heatCurves(bench.state)).toEqual([
      {
        vessel: 'main',
        name: 'Main beaker',
        readings: [
          { atMs: bench.nowMs - 300_000, temperatureC: 30 },
          { atMs: bench.nowMs, temperatureC: 40 },
        ],
      },
    ])
  })
})
