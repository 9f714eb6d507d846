import { describe, expect, test } from 'vitest'
import type { RemedyProblem } from '../../../src/trade/remedy'
import { bindingAt, verifyRemedy } from '../../../src/trade/remedy-check'
import { solveRemedy, withinAllLimits } from '../../../src/trade/remedy-coupled'
import { addTheLeast } from '../../../src/trade/remedy-least'
import { type Coupling, costOf } from '../../../src/trade/remedy-model'
import { roundRemedy } from '../../../src/trade/remedy-round'
import { gram, line, problem } from './remedy-bench'

const grams = (...masses: readonly number[]): number[] => masses.map((mass) => Math.round(mass * gram))

describe('verify', () => {
  const couplings: readonly Coupling[] = [
    {
      kind: 'share',
      id: 'oils',
      parts: [
        { line: 'oil', share: 1 },
        { line: 'wax', share: 0.5 },
      ],
      low: 0,
      high: 0.3,
    },
    { kind: 'stock', id: 'drum', lines: ['oil', 'wax'], stockUg: 12 * gram },
  ]
  const given = problem(
    [line('water', 0.6, 50), line('oil', 0.25, 20, { stockUg: 6 * gram }), line('wax', 0.15, 10, { locked: true })],
    { couplings, capacityUg: 110 * gram },
  )

  test('[R24] additions that keep every limit break none', () => {
    const lines = given.lines.map((each) => ({ ...each, low: 0, high: 1 }))
    const kept: RemedyProblem = { ...given, couplings: [], lines, minTotalUg: 95 * gram }
    expect(verifyRemedy(kept, grams(10, 5, 0))).toEqual([])
    expect(verifyRemedy(kept, grams(10, 4.999, 0))).toEqual([{ limit: 'least-total', byUg: 1000 }])
  })

  test('[R24] every limit that additions break is named, with how much is too much', () => {
    const broken = verifyRemedy(given, grams(40, 8, 5))
    expect(broken.map((each) => ('id' in each ? `${each.limit} ${each.id}` : each.limit))).toEqual([
      'high water',
      'stock oil',
      'low oil',
      'locked wax',
      'low wax',
      'shared drum',
      'capacity',
    ])
    expect(broken).toContainEqual({ limit: 'stock', id: 'oil', byUg: 2 * gram })
    expect(broken).toContainEqual({ limit: 'locked', id: 'wax', byUg: 5 * gram })
    expect(broken).toContainEqual({ limit: 'capacity', byUg: 23 * gram })
    expect(broken).toContainEqual({ limit: 'shared', id: 'drum', byUg: gram })
    expect(verifyRemedy(given, grams(20, 14, 0))).toContainEqual({ limit: 'shared', id: 'oils', byUg: 4.8 * gram })
    expect(verifyRemedy(given, grams(-1, 0, 0))).toContainEqual({ limit: 'in', id: 'water', byUg: gram })
    expect(verifyRemedy(given, grams(0, 0, 0))).toContainEqual({ limit: 'least-total', byUg: 20 * gram })
  })

  test('[R25] what binds is what the masses stand on', () => {
    const lines = [
      line('water', 0.5, 40, { low: 0.4, high: 0.6 }),
      line('oil', 0.2, 21),
      line('wax', 0.2, 18, { low: 0.1, stockUg: gram }),
      line('gum', 0.1, 0, { low: 0.08 }),
      line('salt', 0, 2, { low: 0, high: 0.5 }),
    ]
    const binding = bindingAt(problem(lines, { couplings: [], capacityUg: 100 * gram }), grams(50, 21, 19, 8, 2))
    expect(binding).toEqual([
      { limit: 'high', id: 'oil' },
      { limit: 'stock', id: 'wax' },
      { limit: 'low', id: 'gum' },
      { limit: 'in', id: 'salt' },
      { limit: 'capacity' },
      { limit: 'least-total' },
    ])
  })

  test('[R13] what is lost or added costs what its lines cost, and nobody guesses a price that is missing', () => {
    expect(costOf([{ costPerKg: 2 }, { costPerKg: 30 }], grams(500, 10))).toBeCloseTo(1.3, 12)
    expect(costOf([{ costPerKg: 2 }, {}], grams(500, 10))).toBeNull()
    expect(costOf([{ costPerKg: 2 }, {}], grams(500, 0))).toBeCloseTo(1, 12)
  })
})

describe('limits over several lines', () => {
  const share = (line: string, part = 1) => ({ line, share: part })
  const lines = [
    line('water', 0.8, 50, { low: 0.7, high: 0.9, tolerance: 0.05, costPerKg: 1 }),
    line('phenoxyethanol', 0.01, 1.1, { low: 0.005, high: 0.012, costPerKg: 40 }),
    line('benzoate', 0.005, 0, { low: 0.002, high: 0.006, costPerKg: 20 }),
    line('oil', 0.185, 0, { low: 0.1, high: 0.3, costPerKg: 10 }),
  ]
  const sumOfPreservatives = (high: number): RemedyProblem =>
    problem(lines, {
      couplings: [
        { kind: 'share', id: 'preservatives', parts: [share('phenoxyethanol'), share('benzoate')], low: 0, high },
      ],
    })

  test('[R20] an answer that keeps them anyway is the closed form itself', async () => {
    const given = sumOfPreservatives(0.02)
    expect(await withinAllLimits(given, 'least-extra')).toEqual(addTheLeast(given))
  })

  test('[R20] the sum of preservatives is kept by adding less of the one that is not in yet', async () => {
    const given = sumOfPreservatives(0.0142)
    const relaxed = addTheLeast(given)
    expect(relaxed.feasible && relaxed.outOfRange).toEqual(['preservatives'])
    const remedy = await withinAllLimits(given, 'least-extra')
    if (!remedy.feasible) throw new Error(remedy.why.code)
    expect(remedy.totalUg).toBe(100 * gram)
    expect(verifyRemedy(given, remedy.additionsUg)).toEqual([])
    expect(remedy.additionsUg[2] ?? 0).toBeLessThanOrEqual(0.32 * gram + 2)
    expect(remedy.binds).toContainEqual({ limit: 'shared', id: 'preservatives' })
  })

  test('[R20] where they ask for it the batch grows', async () => {
    const remedy = await withinAllLimits(sumOfPreservatives(0.012), 'least-extra')
    // 1.1 g and 0.2 % of the total are 1.2 % of it at 110 g.
    expect(remedy.feasible && remedy.optimum / gram).toBeCloseTo(110, 6)
  })

  test('[R20] one material on two lines keeps its use level, and one stock serves both', async () => {
    const two = problem(
      [
        line('water', 0.9, 90, { low: 0, high: 1 }),
        line('panthenol', 0.05, 5),
        line('panthenol late', 0.05, 0, { low: 0, high: 0.1 }),
      ],
      {
        couplings: [
          {
            kind: 'share',
            id: 'panthenol in all',
            parts: [share('panthenol'), share('panthenol late')],
            low: 0,
            high: 0.08,
          },
          { kind: 'stock', id: 'panthenol lot', lines: ['panthenol', 'panthenol late'], stockUg: 2 * gram },
        ],
      },
    )
    const remedy = await withinAllLimits(two, 'least-departure')
    expect(remedy).toMatchObject({ feasible: true, totalUg: 100 * gram, outOfRange: [] })
    expect(remedy.feasible && (remedy.additionsUg[1] ?? 0) + (remedy.additionsUg[2] ?? 0)).toBeLessThanOrEqual(2 * gram)
  })

  test('[R18] limits that cannot be kept together are named, those that are not to blame are not', async () => {
    const given = sumOfPreservatives(0.005)
    const harmless: Coupling = { kind: 'share', id: 'oils', parts: [share('oil')], low: 0, high: 0.9 }
    expect(
      await withinAllLimits({ ...given, couplings: [harmless, ...(given.couplings ?? [])] }, 'least-cost'),
    ).toEqual({
      feasible: false,
      why: { code: 'SHARED_LIMITS_CONFLICT', ids: ['preservatives'], at: 0.013, limit: 0.005, allLocked: false },
    })
    const closed = { ...given, capacityUg: 90 * gram }
    expect(await solveRemedy(closed, 'least-extra')).toEqual(addTheLeast(closed))
  })
})

describe('rounding to the balances', () => {
  const lines = [line('water', 0.7, 50), line('oil', 0.2, 12.3456), line('gum', 0.1, 0)]

  test('[R19] each addition stands on its balance, and q.s. takes what the roundings come to', () => {
    const rounded = roundRemedy(problem(lines), grams(20.0001, 7.6544, 9.9999), [100_000, 10_000, 1_000])
    expect(rounded).toEqual({
      additionsUg: [20 * gram, 7.65 * gram, 10 * gram],
      totalUg: 99_995_600,
      residual: 'water',
      breaks: [],
    })
  })

  test('[R19] a step further is taken where that keeps what the nearest one breaks', () => {
    // The oil that is in is just what 100 g may hold; a total rounded down would hold too much of it.
    const full = [line('water', 0.75, 50), line('oil', 0.25, 26.25)]
    const rounded = roundRemedy(problem(full), grams(23.7504, 0), [1_000, 1_000])
    expect(rounded).toMatchObject({ additionsUg: grams(23.75, 0), breaks: [] })
    const over = [line('water', 0.75, 50), line('oil', 0.25, 26.2501)]
    const up = roundRemedy(problem(over), grams(23.7504, 0), [1_000, 1_000])
    expect(up).toMatchObject({ additionsUg: grams(23.751, 0), totalUg: 100_001_100, breaks: [] })
  })

  test('[R19] a line stays in its range and its stock where the nearest step does not', () => {
    const tight = [
      line('water', 0.7, 50, { low: 0.5, high: 0.8 }),
      line('oil', 0.2, 20, { high: 0.2004, low: 0.2 }),
      line('gum', 0.1, 0, { low: 0.05, stockUg: 9_960_000 }),
    ]
    const rounded = roundRemedy(
      problem(tight, { minTotalUg: 90 * gram }),
      grams(20, 0, 9.96),
      [10_000, 50_000, 100_000],
    )
    expect(rounded.additionsUg).toEqual(grams(20.06, 0, 9.9))
    expect(rounded.breaks.filter(({ limit }) => limit === 'stock')).toEqual([])
  })

  test('[R19] where no step keeps all, the one that breaks the fewest is taken, and what it breaks is told', () => {
    const lines = [
      line('water', 0.65, 60, { low: 0.5, high: 0.8 }),
      line('oil', 0.3, 30, { low: 0.3, high: 0.32, locked: true }),
      line('gum', 0.05, 5, { low: 0.04, high: 0.052, locked: true }),
    ]
    const rounded = roundRemedy(problem(lines, { capacityUg: 102 * gram }), grams(5, 0, 0), grams(10, 1, 1))
    expect(rounded).toMatchObject({ additionsUg: [0, 0, 0], totalUg: 95 * gram })
    expect(rounded.breaks).toEqual([{ limit: 'high', id: 'gum', byUg: 60_000 }])
  })

  test('[R19] with q.s. closed the widest line takes it; with all closed nobody does', () => {
    const closed = lines.map((each) => (each.id === 'water' ? { ...each, locked: true } : each))
    expect(roundRemedy(problem(closed), grams(0, 7.6544, 9.9999), [1_000, 10_000, 1_000]).residual).toBe('oil')
    const shut = lines.map((each) => ({ ...each, locked: true }))
    expect(roundRemedy(problem(shut), [0, 0, 0], [1_000, 1_000, 1_000])).toMatchObject({ residual: null, breaks: [] })
  })
})
