import { describe, expect, test } from 'vitest'
import { bindingAt, outOfRangeAt, shareAt, slackUg, verifyRemedy } from '../../../src/trade/remedy-check'
import type { Coupling } from '../../../src/trade/remedy-model'
import { gram, line, problem } from './remedy-bench'

const wide = { low: 0, high: 1 }
/** 70 g of water and 30 g of oil, all of it in. */
const two = (oil: object = {}, more: object = {}) =>
  problem([line('water', 0.7, 70, wide), line('oil', 0.3, 30, { ...wide, ...oil })], more)
const nothing = [0, 0]
const about = expect.closeTo(gram, 3)
/** 2.1 µg at 100 g. */
const slack = slackUg(two())

describe('[R24] verifying names', () => {
  test('nothing where every limit is kept', () => {
    expect(slack).toBeCloseTo(2.1, 9)
    expect(verifyRemedy(two(), nothing)).toEqual([])
  })

  test('what is taken out, and what is more than there is, to the microgram', () => {
    expect(verifyRemedy(two(), [1, -1])).toEqual([{ limit: 'in', id: 'oil', byUg: 1 }])
    expect(verifyRemedy(two({ stockUg: 5 }), [0, 5])).toEqual([])
    expect(verifyRemedy(two({ stockUg: 5 }), [0, 6])).toEqual([{ limit: 'stock', id: 'oil', byUg: 1 }])
    expect(verifyRemedy(two({ locked: true, stockUg: 0 }), [0, 1])).toEqual([{ limit: 'locked', id: 'oil', byUg: 1 }])
  })

  test('a line past its least or its most, beyond what rounding makes', () => {
    expect(verifyRemedy(two({ high: 0.29 }), nothing)).toEqual([{ limit: 'high', id: 'oil', byUg: about }])
    expect(verifyRemedy(two({ low: 0.31 }), nothing)).toEqual([{ limit: 'low', id: 'oil', byUg: about }])
    expect(verifyRemedy(two({ high: 0.3 - 2e-8 }), nothing)).toEqual([])
    expect(verifyRemedy(two({ high: 0.3 - 3e-8 }), nothing)).toMatchObject([{ limit: 'high', id: 'oil' }])
  })

  test('the vessel, the least total and the stirrer', () => {
    expect(verifyRemedy(two({}, { capacityUg: 99 * gram }), nothing)).toEqual([{ limit: 'capacity', byUg: gram }])
    expect(verifyRemedy(two({}, { minTotalUg: 101 * gram }), nothing)).toEqual([{ limit: 'least-total', byUg: gram }])
    const stirs = (min: number, max: number) => two({}, { stirsUg: { min: min * gram, max: max * gram } })
    expect(verifyRemedy(stirs(100, 100), nothing)).toEqual([])
    expect(verifyRemedy(stirs(101, 200), nothing)).toEqual([{ limit: 'stirs-least', byUg: gram }])
    expect(verifyRemedy(stirs(50, 99), nothing)).toEqual([{ limit: 'stirs-most', byUg: gram }])
  })

  test('a limit over several lines, and a stock that they draw on', () => {
    const share = (low: number, high: number): Coupling => ({
      kind: 'share',
      id: 'both',
      parts: [
        { line: 'water', share: 0.1 },
        { line: 'oil', share: 0.5 },
      ],
      low,
      high,
    })
    // 7 g and 15 g of 100 g.
    const of = (...couplings: readonly Coupling[]) => two({}, { couplings })
    expect(verifyRemedy(of(share(0, 0.22)), nothing)).toEqual([])
    expect(verifyRemedy(of(share(0, 0.21)), nothing)).toEqual([
      { limit: 'shared', id: 'both', byUg: expect.closeTo(gram, 3) },
    ])
    expect(verifyRemedy(of(share(0.23, 1)), nothing)).toEqual([
      { limit: 'shared', id: 'both', byUg: expect.closeTo(gram, 3) },
    ])
    const stock: Coupling = { kind: 'stock', id: 'lots', lines: ['water', 'oil'], stockUg: 3 * gram }
    expect(verifyRemedy(of(stock), [2 * gram, gram])).toEqual([])
    expect(verifyRemedy(of(stock), [2 * gram, 2 * gram])).toEqual([{ limit: 'shared', id: 'lots', byUg: gram }])
    expect(outOfRangeAt(of(share(0, 0.21), stock), [70 * gram, 30 * gram], 100 * gram)).toEqual(['both'])
    expect(outOfRangeAt(two({ high: 0.29 }), [70 * gram, 30 * gram], 100 * gram)).toEqual(['oil'])
    expect(outOfRangeAt(two({ low: 0.31 }), [70 * gram, 30 * gram], 100 * gram)).toEqual(['oil'])
    const { parts } = share(0, 1) as Extract<Coupling, { kind: 'share' }>
    expect(shareAt(two(), { kind: 'share', id: 'both', parts, low: 0, high: 1 }, [70 * gram, 30 * gram])).toBeCloseTo(
      0.22,
      12,
    )
    expect(shareAt(two(), { kind: 'share', id: 'both', parts, low: 0, high: 1 }, nothing)).toBe(0)
  })
})

describe('[R25] what binds', () => {
  const at = (oil: object, finalG: readonly [number, number] = [80, 32], more: object = {}) =>
    bindingAt(
      two(oil, more),
      finalG.map((g) => g * gram),
    )

  test('is nothing where there is room everywhere', () => {
    expect(at({})).toEqual([])
  })

  test('is the most or the least of a line; a least of nothing binds nobody', () => {
    expect(at({ high: 32 / 112 })).toEqual([{ limit: 'high', id: 'oil' }])
    expect(at({ low: 32 / 112 })).toEqual([{ limit: 'low', id: 'oil' }])
    expect(at({ massUg: 0, fraction: 0 }, [80, 0]).map(({ limit }) => limit)).not.toContain('low')
  })

  test('is stock or lock where a line is short of its plan, and what is in where it is over it', () => {
    expect(at({ stockUg: 2 * gram })).toEqual([{ limit: 'stock', id: 'oil' }])
    expect(at({ locked: true, stockUg: 0, massUg: 32 * gram })).toEqual([{ limit: 'locked', id: 'oil' }])
    expect(at({ massUg: 40 * gram }, [80, 40])).toEqual([{ limit: 'in', id: 'oil' }])
    expect(at({ stockUg: 10 * gram }, [80, 40])).toEqual([])
  })

  test('is the vessel, the least total, the stirrer', () => {
    expect(at({}, [80, 32], { capacityUg: 112 * gram })).toEqual([{ limit: 'capacity' }])
    expect(at({}, [80, 32], { minTotalUg: 112 * gram })).toEqual([{ limit: 'least-total' }])
    const stirs = (min: number, max: number) => at({}, [80, 32], { stirsUg: { min: min * gram, max: max * gram } })
    expect(stirs(112, 150)).toEqual([{ limit: 'stirs-least' }])
    expect(stirs(50, 112)).toEqual([{ limit: 'stirs-most' }])
    expect(stirs(50, 150)).toEqual([])
  })
})
