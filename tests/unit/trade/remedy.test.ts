import { describe, expect, test } from 'vitest'
import { microgramsFromGrams } from '../../../src/trade/mass'
import { letQsAbsorb, type RemedyLine, type RemedyProblem, scaleTheRest } from '../../../src/trade/remedy'
import { remedyCases } from './remedy-cases'

const gram = 1_000_000
const line = (id: string, fraction: number, massG: number, more: Partial<RemedyLine> = {}): RemedyLine => ({
  id,
  fraction,
  low: fraction * 0.95,
  high: fraction * 1.05,
  massUg: massG * gram,
  locked: false,
  stockUg: null,
  ...more,
})
const problem = (lines: readonly RemedyLine[], more: Partial<RemedyProblem> = {}): RemedyProblem => ({
  totalUg: 100 * gram,
  capacityUg: 150 * gram,
  qsIndex: 0,
  lines,
  ...more,
})

describe('against reference cases', () => {
  test.each(remedyCases)('$name of $totalG g', ({ totalG, capacityG, lines, scale, qs }) => {
    const given: RemedyProblem = {
      totalUg: microgramsFromGrams(totalG),
      capacityUg: microgramsFromGrams(capacityG),
      qsIndex: 0,
      lines: lines.map(([id, fraction, low, high, massG, locked, stockG]) => ({
        id,
        fraction,
        low,
        high,
        massUg: microgramsFromGrams(massG),
        locked,
        stockUg: stockG === null ? null : microgramsFromGrams(stockG),
      })),
    }
    const scaled = scaleTheRest(given)
    expect(scaled.feasible).toBe(scale !== null)
    if (scaled.feasible) expect(Math.abs(scaled.factor - (scale ?? 0))).toBeLessThanOrEqual(1e-6)

    const absorbed = letQsAbsorb(given)
    expect(absorbed.feasible).toBe(qs.feasible)
    expect(absorbed.qsFinalUg).toBe(microgramsFromGrams(qs.finalG))
    expect(absorbed.outOfRange).toEqual(qs.outOfRange.map((index) => given.lines[index]?.id))
  })
})

describe('scale the rest', () => {
  test('[R51] every line goes to the same multiple of its plan, and what is in stays in', () => {
    const remedy = scaleTheRest(problem([line('water', 0.7, 50), line('oil', 0.2, 22), line('gum', 0.1, 0)]))
    expect(remedy).toMatchObject({ feasible: true, outOfRange: [], totalUg: 110 * gram })
    expect(remedy.feasible && remedy.additionsUg).toEqual([27 * gram, 0, 11 * gram])
    expect(remedy.feasible && remedy.factor).toBeCloseTo(1.1, 12)
  })

  test('[R52] it is impossible where the vessel is too small, and says how large it must be', () => {
    const lines = [line('water', 0.8, 50), line('oil', 0.2, 40)]
    expect(scaleTheRest(problem(lines))).toEqual({
      feasible: false,
      why: { code: 'VESSEL_TOO_SMALL', neededUg: 200 * gram, capacityUg: 150 * gram },
      demandedBy: 'oil',
    })
  })

  test('[R52] it is impossible where a locked line cannot follow, and names both', () => {
    const lines = [
      line('water', 0.7, 50),
      line('oil', 0.2, 22),
      line('gum', 0.1, 10, { locked: true, stockUg: 5 * gram }),
    ]
    expect(scaleTheRest(problem(lines))).toEqual({
      feasible: false,
      why: { code: 'LINE_LOCKED', id: 'gum', neededUg: gram },
      demandedBy: 'oil',
    })
  })

  test('[R52] it is impossible where the stock is short, and says by how much', () => {
    const lines = [line('water', 0.8, 50, { stockUg: 30 * gram }), line('oil', 0.2, 22)]
    expect(scaleTheRest(problem(lines))).toMatchObject({
      feasible: false,
      why: { code: 'STOCK_TOO_SHORT', id: 'water', neededUg: 38 * gram, stockUg: 30 * gram },
    })
  })

  test('[R52] it is impossible with something in that is not in the formula', () => {
    const lines = [line('water', 1, 50), line('mica', 0, 1)]
    expect(scaleTheRest(problem(lines))).toMatchObject({
      feasible: false,
      why: { code: 'LINE_NOT_IN_FORMULA', id: 'mica' },
    })
    expect(scaleTheRest(problem([line('water', 1, 50), line('mica', 0, 0)])).feasible).toBe(true)
  })

  test('[R53] where only the planned total stands in the way, the smaller batch is offered', () => {
    const lines = [line('water', 0.8, 20), line('oil', 0.2, 5, { stockUg: 10 * gram })]
    expect(scaleTheRest(problem(lines))).toEqual({
      feasible: false,
      why: { code: 'STOCK_TOO_SHORT', id: 'oil', neededUg: 15 * gram, stockUg: 10 * gram },
      demandedBy: null,
      smaller: { factor: 0.75, totalUg: 75 * gram },
    })
    expect(scaleTheRest(problem(lines, { minTotalUg: 75 * gram }))).toMatchObject({ feasible: true, factor: 0.75 })
  })
})

describe('let q.s. absorb it', () => {
  test('[R54] the total stays, the others are topped up and q.s. takes what remains', () => {
    const remedy = letQsAbsorb(problem([line('water', 0.7, 50), line('oil', 0.2, 22), line('gum', 0.1, 0)]))
    expect(remedy).toEqual({
      feasible: true,
      totalUg: 100 * gram,
      additionsUg: [18 * gram, 0, 10 * gram],
      outOfRange: ['oil'],
      qsFinalUg: 68 * gram,
    })
  })

  test('[R54] a locked or short line stays below its plan, and q.s. fills up for it', () => {
    const lines = [
      line('water', 0.7, 50),
      line('oil', 0.2, 18, { locked: true }),
      line('gum', 0.1, 0, { stockUg: gram }),
    ]
    expect(letQsAbsorb(problem(lines))).toMatchObject({
      feasible: true,
      additionsUg: [31 * gram, 0, gram],
      outOfRange: ['water', 'oil', 'gum'],
    })
  })

  test('[R55] it is impossible once there is more q.s. in than may remain', () => {
    expect(letQsAbsorb(problem([line('water', 0.7, 70), line('oil', 0.3, 32)]))).toEqual({
      feasible: false,
      why: { code: 'QS_ALREADY_PAST', id: 'water', pastUg: 2 * gram },
      qsFinalUg: 68 * gram,
      outOfRange: ['oil'],
    })
  })

  test('[R55] it is impossible without a q.s. line, beyond the vessel, with q.s. locked or out of stock', () => {
    const lines = [line('water', 0.7, 50), line('oil', 0.3, 30)]
    const why = (changed: Partial<RemedyProblem>): string => {
      const remedy = letQsAbsorb(problem(lines, changed))
      return remedy.feasible ? 'feasible' : remedy.why.code
    }
    const water = (more: Partial<RemedyLine>): Partial<RemedyProblem> => ({
      lines: [line('water', 0.7, 50, more), line('oil', 0.3, 30)],
    })
    expect(why({})).toBe('feasible')
    expect(why({ qsIndex: null })).toBe('NO_QS_LINE')
    expect(why({ capacityUg: 99 * gram })).toBe('VESSEL_TOO_SMALL')
    expect(why(water({ locked: true }))).toBe('LINE_LOCKED')
    expect(why(water({ stockUg: 19 * gram }))).toBe('STOCK_TOO_SHORT')
  })
})
