import { describe, expect, test } from 'vitest'
import type { Material } from '../../../src/batch/catalogue'
import type { Line } from '../../../src/batch/formula'
import type { PlannedLine } from '../../../src/batch/plan'
import { couplingsOf, type Limits, limitsOf, stockOf } from '../../../src/batch/remedy-limits'
import { scaledBatch } from '../../../src/batch/scaled-batch'
import { grams } from '../../support/batch'
import { benchWith } from '../../support/few-steps'
import { fineBalance, material, qs, revision, share, water } from '../../support/formula-maker'

const planned = (line: Line, own: Partial<Material> = {}, more: Partial<PlannedLine> = {}): PlannedLine => ({
  line,
  phase: 'A',
  material: material(line.id, own),
  fraction: 0.05,
  targetUg: grams(25),
  balance: fineBalance,
  lots: [],
  ...more,
})

const acid: Line = {
  id: 'acid',
  materialId: 'acid',
  amount: { kind: 'as-needed', expected: 0.005, min: 0.001, max: 0.015 },
}
const oil = (range?: { min: number; max: number }): Line => share('oil', 5, range ? { range } : {})
const use = (min: number, max: number) => ({ useLevel: { min, max } })
const limits = (low: number, high: number, from: Limits['from']) => ({
  low: expect.closeTo(low, 12),
  high: expect.closeTo(high, 12),
  from,
})

describe('[R15] what a line may be', () => {
  test.each<[string, PlannedLine, object]>([
    ['an adjuster from its least to its most', planned(acid), limits(0.001, 0.015, 'formula')],
    ['q.s. anything', planned(qs()), limits(0, 1, 'formula')],
    [
      'q.s. with a range what that says',
      planned({ ...qs(), range: { min: 0.6, max: 0.9 } }),
      limits(0.6, 0.9, 'formula'),
    ],
    ['its range', planned(oil({ min: 0.04, max: 0.06 })), limits(0.04, 0.06, 'formula')],
    [
      'its range within a wider use level',
      planned(oil({ min: 0.04, max: 0.06 }), use(0.04, 0.06)),
      limits(0.04, 0.06, 'formula'),
    ],
    [
      'its range up to the use level',
      planned(oil({ min: 0.04, max: 0.06 }), use(0.01, 0.055)),
      limits(0.04, 0.055, 'use level'),
    ],
    [
      'its range from the use level on',
      planned(oil({ min: 0.04, max: 0.06 }), use(0.045, 0.2)),
      limits(0.045, 0.06, 'use level'),
    ],
    ['its band without a range, 1 %', planned(oil()), limits(0.0495, 0.0505, 'tolerance')],
    ['its band up to the use level', planned(oil(), use(0, 0.0502)), limits(0.0495, 0.0502, 'use level')],
    ['its band where the use level is no less', planned(oil(), use(0, 0.0505)), limits(0.0495, 0.0505, 'tolerance')],
    ['never less than its balance tells', planned(oil(), {}, { targetUg: 10_000 }), limits(0.045, 0.055, 'tolerance')],
    ['all where its step is all that it weighs', planned(oil(), {}, { targetUg: 1_000 }), limits(0, 0.1, 'tolerance')],
    ['beside the formula its use level', planned(oil(), use(0.02, 0.2), { phase: '+' }), limits(0, 0.2, 'use level')],
    ['beside the formula anything', planned(oil(), {}, { phase: '+' }), limits(0, 1, 'none')],
  ])('%s', (_what, line, wanted) => {
    expect(limitsOf(line)).toEqual(wanted)
  })

  test('is held against what the plan is now', () => {
    expect(limitsOf(planned(oil()), 0.1)).toEqual(limits(0.099, 0.101, 'tolerance'))
  })
})

describe('[R17] what the lots of a line still give', () => {
  const { state } = benchWith({ kind: 'clean' })

  test('is known only where all of them are, and never less than nothing', () => {
    const lots = new Map([
      ['squalane', ['one', 'two']],
      ['none', []],
    ])
    const of = (line: string, onHand: Parameters<typeof stockOf>[2]) =>
      stockOf({ ...state, lotsOfLine: lots }, line, onHand)
    const onHand = new Map([
      ['one', grams(20)],
      ['two', grams(5)],
    ])
    expect(of('squalane', onHand)).toBe(grams(25))
    expect(of('squalane', new Map([...onHand, ['two', -grams(5)]]))).toBe(grams(20))
    expect(of('squalane', new Map([['one', grams(20)]]))).toBeNull()
    expect(of('squalane', null)).toBeNull()
    expect(of('none', onHand)).toBeNull()
    expect(of('other', onHand)).toBeNull()
  })

  test('and what two lines draw on stands over both', () => {
    const lines = new Map(state.plan.lines)
    const squalane = lines.get('squalane')
    if (squalane === undefined) throw new Error('no squalane')
    const own = { ...squalane, material: { ...squalane.material, useLevel: { min: 0, max: 0.2 } } }
    lines.set('squalane', own)
    lines.set('more', { ...own, line: { ...own.line, id: 'more' } })
    const lotsOfLine = new Map([
      ['squalane', ['one']],
      ['more', ['one', 'two']],
    ])
    const twice = { ...state, plan: { ...state.plan, lines }, lotsOfLine }
    const ofBoth = (onHand: Parameters<typeof stockOf>[2]) =>
      couplingsOf(twice, onHand).filter(({ id }) => id === squalane.material.id)
    const parts = [
      { line: 'squalane', share: 1 },
      { line: 'more', share: 1 },
    ]
    const level = { kind: 'share', id: 'squalane', parts, low: 0, high: 0.2 }
    expect(ofBoth(null)).toEqual([level])
    expect(ofBoth(new Map([['one', grams(20)]]))).toEqual([level])
    const both = new Map([
      ['one', grams(20)],
      ['two', -grams(1)],
    ])
    expect(ofBoth(both)).toEqual([
      level,
      { kind: 'stock', id: 'squalane', lines: ['squalane', 'more'], stockUg: grams(20) },
    ])
    expect(couplingsOf(state, both).some(({ kind }) => kind === 'stock')).toBe(false)
  })
})

describe('[F27] a revision at another size', () => {
  test('tells each line with its stock and what the lines of its material want beyond it', () => {
    const acidic = { ...acid, amount: { ...acid.amount, expected: 0.05 } } as Line
    const lines = [qs(), share('oil', 20), { ...share('oil', 10), id: 'oil-again' }, acidic]
    const materials = new Map([water, material('oil', { name: 'Oil' })].map((each) => [each.id, each]))
    const stock = new Map([
      ['oil', grams(25)],
      ['water', grams(500)],
    ])
    const row = { phase: 'A', stockUg: null, shortUg: 0 }
    const oils = { ...row, materialId: 'oil', name: 'Oil', stockUg: grams(25), shortUg: grams(5) }
    expect(scaledBatch(revision(lines), materials, stock, grams(100))).toEqual({
      sizeUg: grams(100),
      rows: [
        {
          ...row,
          line: 'water',
          materialId: 'water',
          name: 'water',
          share: 0.65,
          massUg: grams(65),
          stockUg: grams(500),
        },
        { ...oils, line: 'oil', share: 0.2, massUg: grams(20) },
        { ...oils, line: 'oil-again', share: 0.1, massUg: grams(10) },
        { ...row, line: 'acid', materialId: 'acid', name: 'acid', share: 0.05, massUg: grams(5) },
      ],
      largest: { limiting: 'oil', sizeUg: Math.floor(grams(25) / 0.3) },
    })
  })
})
