import { describe, expect, test } from 'vitest'
import { acceptAsIs, scaleTheRest, scaleToSmaller } from '../../../src/trade/remedy'
import { addTheLeast, departTheLeast, spendTheLeast } from '../../../src/trade/remedy-least'
import { gram, line, problem } from './remedy-bench'

const grams = (additionsUg: readonly number[]): number[] => additionsUg.map((each) => Math.round(each / 1000) / 1000)

describe('least extra', () => {
  test('[R10] a line over its range asks for just the total at which it is back in it', () => {
    const remedy = addTheLeast(problem([line('water', 0.7, 50), line('oil', 0.2, 23.1), line('gum', 0.1, 0)]))
    if (!remedy.feasible) throw new Error(remedy.why.code)
    expect(remedy.totalUg).toBe(110 * gram)
    expect(remedy.outOfRange).toEqual([])
    expect(remedy.binds).toEqual([{ limit: 'high', id: 'oil' }])
  })

  test('[R10] with no line over its range the planned total is enough, and is what binds', () => {
    const remedy = addTheLeast(problem([line('water', 0.8, 50), line('oil', 0.2, 20.9)]))
    expect(remedy).toMatchObject({
      totalUg: 100 * gram,
      additionsUg: [29.1 * gram, 0],
      binds: [{ limit: 'least-total' }],
    })
  })

  test('[R10] where all lines at their least are too much, the total grows until they are not', () => {
    const lines = [
      line('water', 0.5, 47.5, { low: 0.45, high: 0.6 }),
      line('oil', 0.25, 27, { low: 0.2, high: 0.3 }),
      line('wax', 0.25, 27, { low: 0.2, high: 0.3 }),
    ]
    const remedy = addTheLeast(problem(lines, { minTotalUg: gram }))
    expect(remedy).toMatchObject({ totalUg: 101.5 * gram, binds: [{ limit: 'contents' }] })
    const gum = line('gum', 0.02, 0, { low: 0.02, high: 0.03 })
    const withGum = addTheLeast(problem([...lines, gum], { minTotalUg: gram }))
    if (!withGum.feasible) throw new Error(withGum.why.code)
    expect(withGum.totalUg / gram).toBeCloseTo(101.5 / 0.98, 5)
    expect(withGum.binds).toEqual([
      { limit: 'in', id: 'water' },
      { limit: 'in', id: 'oil' },
      { limit: 'in', id: 'wax' },
      { limit: 'low', id: 'gum' },
    ])
  })

  test('[R11] at the least total every other line goes to its target, and the widest tolerance takes what is over', () => {
    const lines = [
      line('water', 0.6, 40, { tolerance: 0.05 }),
      line('oil', 0.2, 21, { tolerance: 0.01 }),
      line('wax', 0.2, 10, { tolerance: 0.01 }),
    ]
    const remedy = addTheLeast(problem(lines))
    expect(remedy.feasible && grams(remedy.additionsUg)).toEqual([19, 0, 10])
  })

  test('[R10] something that is not in the formula is diluted to what is allowed of it', () => {
    const lines = [
      line('water', 1, 90, { low: 0.9, high: 1 }),
      line('dye', 0, 1.2, { low: 0, high: 0.01, locked: true }),
    ]
    expect(addTheLeast(problem(lines))).toMatchObject({ totalUg: 120 * gram, additionsUg: [28.8 * gram, 0] })
  })
})

describe('least departure', () => {
  test('[R12] at the planned total the worst line is as near its target as it can be, and is named', () => {
    const remedy = departTheLeast(problem([line('water', 0.7, 50), line('oil', 0.2, 23), line('gum', 0.1, 0)]))
    if (!remedy.feasible) throw new Error(remedy.why.code)
    expect(remedy).toMatchObject({ totalUg: 100 * gram, outOfRange: ['oil'], binds: [{ limit: 'in', id: 'oil' }] })
    expect(remedy.optimum).toBeCloseTo(3, 9)
    expect(grams(remedy.additionsUg)).toEqual([17, 0, 10])
  })

  test('[R12] what is too much is spread over the others in proportion to their tolerances', () => {
    const lines = [
      line('water', 0.6, 0, { tolerance: 0.02 }),
      line('oil', 0.3, 0, { tolerance: 0.01 }),
      line('wax', 0.1, 16, { tolerance: 0.1 }),
    ]
    const remedy = departTheLeast(problem(lines))
    if (!remedy.feasible) throw new Error(remedy.why.code)
    expect(remedy.optimum).toBeCloseTo(2, 9)
    expect(grams(remedy.additionsUg)).toEqual([56, 28, 0])
    expect(remedy.binds.map(({ limit }) => limit)).toEqual(['tolerance', 'tolerance'])
  })

  test('[R12] what is too little is spread likewise, and a line that is closed or runs out stays behind', () => {
    const lines = [
      line('water', 0.6, 60, { tolerance: 0.02, stockUg: 10 * gram }),
      line('oil', 0.3, 30, { tolerance: 0.01 }),
      line('wax', 0.1, 4, { tolerance: 0.1, locked: true }),
    ]
    const remedy = departTheLeast(problem(lines))
    if (!remedy.feasible) throw new Error(remedy.why.code)
    expect(remedy.optimum).toBeCloseTo(2, 9)
    expect(grams(remedy.additionsUg)).toEqual([4, 2, 0])
  })

  test('[R12] more in than planned is the total; in all their tolerances it is at most one', () => {
    const remedy = departTheLeast(problem([line('water', 0.7, 72), line('oil', 0.3, 30)]))
    expect(remedy).toMatchObject({ feasible: true, totalUg: 102 * gram, additionsUg: [0, 0], outOfRange: [] })
    expect(remedy.feasible && remedy.optimum <= 1).toBe(true)
  })

  test('[R12] it is impossible beyond the vessel, and where the lines cannot reach the planned total', () => {
    const full = departTheLeast(problem([line('water', 1, 151)]))
    expect(full).toEqual({
      feasible: false,
      why: { code: 'VESSEL_TOO_SMALL', neededUg: 151 * gram, capacityUg: 150 * gram },
    })
    const short = departTheLeast(
      problem([line('water', 0.9, 50, { stockUg: 30 * gram }), line('oil', 0.1, 9, { locked: true })]),
    )
    expect(short).toMatchObject({
      feasible: false,
      why: { code: 'MAXIMUMS_BELOW_TOTAL', totalUg: 100 * gram, maximumsUg: 89 * gram, ids: ['water', 'oil'] },
    })
  })
})

describe('least cost', () => {
  const price = (costPerKg: number, range: number) => ({ costPerKg, low: 0.5 - range, high: 0.5 + range })

  test('[R13] what is dear stays at its least, what is cheap fills up', () => {
    const remedy = spendTheLeast(problem([line('water', 0.5, 0, price(1, 0.1)), line('oil', 0.5, 0, price(20, 0.1))]))
    expect(remedy).toMatchObject({ totalUg: 100 * gram, additionsUg: [60 * gram, 40 * gram] })
    expect(remedy.feasible && remedy.optimum).toBeCloseTo(0.86, 9)
  })

  test('[R13] where what is to add is dear, no larger batch is made than must be', () => {
    const lines = [line('water', 0.5, 60, price(1, 0.05)), line('oil', 0.5, 40, price(20, 0.05))]
    const remedy = spendTheLeast(problem(lines))
    // 60 g is 55 % of 109.09 g; 45 % of that is 49.09 g of oil.
    expect(remedy.feasible && remedy.totalUg / gram).toBeCloseTo(60 / 0.55, 5)
  })

  test('[R13] it is not reckoned where a price is missing of what could be added', () => {
    const lines = [line('water', 0.5, 60, price(1, 0.15)), line('oil', 0.5, 40, { low: 0.4, high: 0.6 })]
    expect(spendTheLeast(problem(lines))).toEqual({ feasible: false, why: { code: 'COST_UNKNOWN', id: 'oil' } })
    const closed = lines.map((each) => (each.id === 'oil' ? { ...each, locked: true } : each))
    expect(spendTheLeast(problem(closed))).toMatchObject({ feasible: true, optimum: 0, additionsUg: [0, 0] })
  })
})

describe('as it is, and smaller', () => {
  test('[R23] left as it is, the other lines go to their plan and the batch ends heavier', () => {
    const lines = [line('water', 0.7, 50), line('oil', 0.2, 23), line('gum', 0.1, 4, { locked: true })]
    expect(acceptAsIs(problem(lines))).toEqual({
      feasible: true,
      totalUg: 97 * gram,
      additionsUg: [20 * gram, 0, 0],
      outOfRange: ['oil', 'gum'],
    })
  })

  test('[R22] the smaller batch has the exact ratio and all that runs out', () => {
    const lines = [line('water', 0.8, 20), line('oil', 0.2, 5, { stockUg: 10 * gram })]
    expect(scaleToSmaller(problem(lines))).toEqual({
      feasible: true,
      factor: 0.75,
      totalUg: 75 * gram,
      additionsUg: [40 * gram, 10 * gram],
      outOfRange: [],
    })
    const over = problem([line('water', 0.8, 20), line('oil', 0.2, 40)])
    expect(scaleToSmaller(over)).toEqual(scaleTheRest(over))
  })

  test('[R22] a line that is closed with nothing in leaves no smaller batch', () => {
    const none = problem([line('water', 0.8, 0), line('oil', 0.2, 0, { locked: true })])
    expect(scaleToSmaller(none)).toMatchObject({ feasible: false, why: { code: 'LINE_LOCKED', id: 'oil' } })
  })

  test('[R20] lines that share a stock scale as far as it reaches', () => {
    const lines = [line('water', 0.6, 60), line('oil', 0.2, 10), line('oil again', 0.2, 0)]
    const couplings = [{ kind: 'stock', id: 'oil drum', lines: ['oil', 'oil again'], stockUg: 25 * gram }] as const
    expect(scaleTheRest(problem(lines, { couplings }))).toMatchObject({
      feasible: false,
      why: { code: 'STOCK_TOO_SHORT', id: 'oil drum', neededUg: 30 * gram, stockUg: 25 * gram },
    })
    expect(acceptAsIs(problem(lines, { couplings })).additionsUg).toEqual([0, 10 * gram, 15 * gram])
  })
})
