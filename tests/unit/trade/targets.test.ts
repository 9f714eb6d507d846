import { describe, expect, test } from 'vitest'
import type { Amount } from '../../../src/trade/amount'
import { planTargets, sumOfFractions, type TargetLine, type TargetPlan } from '../../../src/trade/targets'

const gram = 1_000_000
const line = (id: string, amount: Amount, more: Partial<TargetLine> = {}): TargetLine => ({
  id,
  amount,
  stepUg: 10_000,
  ...more,
})
const part = (id: string, fraction: number, more: Partial<TargetLine> = {}): TargetLine =>
  line(id, { kind: 'fraction', fraction }, more)
const rest: Amount = { kind: 'qs', portions: [{ step: 'weigh water', rest: true }] }

function planOf(lines: readonly TargetLine[], sizeUg: number): TargetPlan {
  const planned = planTargets(lines, sizeUg)
  if (!planned.ok) throw new Error(planned.refusal.code)
  return planned.value
}

const targets = ({ lines }: TargetPlan): Record<string, number> =>
  Object.fromEntries([...lines].map(([id, { targetUg }]) => [id, targetUg]))

describe('targets of a formula with q.s.', () => {
  const lotion = [
    line('water', rest),
    part('oil', 0.07),
    part('panthenol', 0.0133, { stepUg: 1_000 }),
    line('acid', { kind: 'as-needed', expected: 0.005, min: 0, max: 0.015 }),
  ]

  test('[L20] q.s. is what the others leave, exactly', () => {
    const plan = planOf(lotion, 500 * gram)
    expect(targets(plan)).toEqual({ water: 455_850_000, oil: 35_000_000, panthenol: 6_650_000, acid: 2_500_000 })
    expect(plan.totalUg).toBe(500 * gram)
    expect(plan.lines.get('water')?.fraction).toBeCloseTo(0.9117, 12)
  })

  test('[L21] 3 % and what the adjusters are expected to take are held back of the rest', () => {
    const plan = planOf(lotion, 500 * gram)
    expect(plan.heldBackUg).toBe(17_500_000)
    expect(plan.lines.get('water')?.portions).toEqual([{ step: 'weigh water', targetUg: 438_350_000 }])
  })

  test('q.s. is shown as finely as the finest of the others, so that shown figures add up', () => {
    const plan = planOf(
      [line('water', rest, { stepUg: 100_000 }), part('gum', 0.012345, { stepUg: 1_000 })],
      100 * gram,
    )
    expect(targets(plan)).toEqual({ water: 98_765_000, gum: 1_235_000 })
    expect([...plan.lines.values()].map(({ shownStepUg }) => shownStepUg)).toEqual([1_000, 1_000])
  })

  test('[L22] a low assay asks for more, and the difference comes off q.s.', () => {
    const corrected = [line('water', rest), part('panthenol', 0.0133, { assayAssumed: 0.75, lotAssay: 0.7 })]
    expect(targets(planOf(corrected, 500 * gram))).toEqual({ water: 492_870_000, panthenol: 7_130_000 })
    const unknown = [line('water', rest), part('panthenol', 0.0133, { assayAssumed: 0.75 })]
    expect(targets(planOf(unknown, 500 * gram)).panthenol).toBe(6_650_000)
  })

  test('[L21] a fixed portion is its fraction of the batch, and all portions with what is held back make the line', () => {
    const amount: Amount = {
      kind: 'qs',
      portions: [
        { step: 'first', rest: true },
        { step: 'withheld', fraction: 0.12 },
      ],
    }
    const plan = planOf([line('water', amount), part('salt', 0.1)], 200 * gram)
    expect(plan.lines.get('water')).toMatchObject({
      targetUg: 180 * gram,
      portions: [
        { step: 'first', targetUg: 150 * gram },
        { step: 'withheld', targetUg: 24 * gram },
      ],
    })
    expect(plan.heldBackUg).toBe(6 * gram)
  })

  test('[L21] nothing stated and no room for the usual share: nothing is held back', () => {
    expect(planOf([line('oil', rest), part('wax', 0.98)], 100 * gram)).toMatchObject({ heldBackUg: 0 })
    expect(planOf([line('oil', { ...rest, heldBack: 0 }), part('wax', 0.5)], 100 * gram).heldBackUg).toBe(0)
  })

  test('[L21] without a rest all that the fixed portions leave is held back', () => {
    const amount: Amount = { kind: 'qs', portions: [{ step: 'first', fraction: 0.4 }] }
    expect(planOf([line('water', amount), part('wax', 0.5)], 100 * gram).heldBackUg).toBe(10 * gram)
  })

  test('without portions the line has none', () => {
    const plan = planOf([line('water', { kind: 'qs', portions: [] }), part('wax', 0.5)], 100 * gram)
    expect(plan.lines.get('water')).toEqual({ targetUg: 50 * gram, shownStepUg: 10_000, fraction: 0.5 })
    expect(plan.heldBackUg).toBe(3 * gram)
  })
})

describe('targets of a formula without q.s.', () => {
  test('[L20] the largest line takes the roundings', () => {
    const thirds = [part('a', 0.3333), part('b', 0.3334), part('c', 0.3333)]
    const plan = planOf(thirds, 50.01 * gram)
    expect(targets(plan)).toEqual({ a: 16_670_000, b: 16_670_000, c: 16_670_000 })
    expect(plan.totalUg).toBe(50_010_000)
  })

  test('[L22] a difference of assay makes the batch larger or smaller', () => {
    const plan = planOf([part('a', 0.5, { assayAssumed: 0.5, lotAssay: 0.4 }), part('b', 0.5)], 100 * gram)
    expect(targets(plan)).toEqual({ a: 62_500_000, b: 50_000_000 })
    expect(plan.totalUg).toBe(112_500_000)
  })
})

describe('what cannot be planned', () => {
  test.each<[string, readonly TargetLine[], number, object]>([
    ['a size of nothing', [line('w', rest)], 0, { code: 'SIZE_BAD' }],
    ['a size that is not a number', [line('w', rest)], Number.NaN, { code: 'SIZE_BAD' }],
    ['a fraction above one', [line('w', rest), part('a', 1.2)], gram, { code: 'FRACTION_BAD', id: 'a' }],
    ['a fraction of nothing', [line('w', rest), part('a', 0)], gram, { code: 'FRACTION_BAD', id: 'a' }],
    [
      'a fraction that is not a number',
      [line('w', rest), part('a', Number.NaN)],
      gram,
      { code: 'FRACTION_BAD', id: 'a' },
    ],
    [
      'an expected amount above its most',
      [line('w', rest), line('a', { kind: 'as-needed', expected: 0.2, min: 0, max: 0.1 })],
      gram,
      { code: 'FRACTION_BAD', id: 'a' },
    ],
    [
      'two rests',
      [line('w', { kind: 'qs', portions: [1, 2].map((step) => ({ step: `${step}`, rest: true as const })) })],
      gram,
      { code: 'FRACTION_BAD', id: 'w' },
    ],
    ['an assay of nothing', [line('w', rest), part('a', 0.1, { lotAssay: 0 })], gram, { code: 'ASSAY_BAD', id: 'a' }],
    ['two q.s. lines', [line('w', rest), line('v', rest)], gram, { code: 'TWO_QS', ids: ['w', 'v'] }],
    ['less than 100 % without q.s.', [part('a', 0.5), part('b', 0.25)], gram, { code: 'TOTAL_NOT_100', total: 0.75 }],
    [
      'nothing left for q.s.',
      [line('w', rest), part('a', 0.7), part('b', 0.4)],
      100 * gram,
      { code: 'QS_NEGATIVE', shortUg: 10 * gram },
    ],
    [
      'fixed portions above q.s.',
      [line('w', { kind: 'qs', portions: [{ step: 's', fraction: 0.3 }] }), part('a', 0.8)],
      100 * gram,
      { code: 'QS_NEGATIVE', shortUg: 10 * gram },
    ],
    [
      'a stated held-back share above q.s.',
      [line('w', { ...rest, heldBack: 0.3 }), part('a', 0.8)],
      100 * gram,
      { code: 'QS_NEGATIVE', shortUg: 10 * gram },
    ],
    [
      'a target below half a step',
      [line('w', rest), part('a', 0.0004)],
      10 * gram,
      { code: 'TARGET_ROUNDS_TO_ZERO', id: 'a', targetUg: 4_000, stepUg: 10_000 },
    ],
  ])('[L23] %s is refused', (_, lines, sizeUg, refusal) => {
    expect(planTargets(lines, sizeUg)).toEqual({ ok: false, refusal })
  })

  test('an adjuster that is expected to take nothing is planned', () => {
    const lines = [line('w', rest), line('acid', { kind: 'as-needed', expected: 0, min: 0, max: 0.01 })]
    expect(targets(planOf(lines, gram))).toEqual({ w: gram, acid: 0 })
  })

  test('the sum of a formula counts its expected amounts', () => {
    const lines = [line('w', rest), part('a', 0.25), line('b', { kind: 'as-needed', expected: 0.5, min: 0, max: 1 })]
    expect(sumOfFractions(lines)).toBe(0.75)
  })
})
