import { describe, expect, test } from 'vitest'
import { studentQuantile } from '../../../src/trade/quantile'
import { outlookOf, plateAsymptote, roomAsymptote, type ThermalCase } from '../../../src/trade/thermal'
import { scoreOf } from '../../support/thermal-score'
import { coolingRun, heatingRun } from '../../support/thermal-simulator'

const cooling = (pairs: readonly (readonly [number, number])[], more: Partial<ThermalCase> = {}): ThermalCase => ({
  kind: 'cooling',
  readings: pairs.map(([atMin, temperatureC]) => ({ atMin, temperatureC })),
  targetC: 40,
  asymptote: roomAsymptote(22),
  ...more,
})
const heating = (pairs: readonly (readonly [number, number])[], more: Partial<ThermalCase> = {}): ThermalCase =>
  cooling(pairs, { kind: 'heating', targetC: 75, asymptote: plateAsymptote, ...more })
const tell = (given: ThermalCase) => outlookOf(given, studentQuantile)

/** A lotion of 500 g, cooling in a room of 22 °C. */
const sixReadings = [
  [0, 72.4],
  [4, 66.9],
  [8, 62.9],
  [13, 57.2],
  [18, 53.4],
  [24, 48.1],
] as const

describe('when a vessel reaches its target', () => {
  test('[L61] six readings give a time, its interval, and when to read again before it', () => {
    const outlook = tell(cooling(sixReadings))
    expect(outlook.kind).toBe('time')
    if (outlook.kind !== 'time') return
    expect(outlook.time.remainingMin).toBeCloseTo(14.2, 0)
    expect(outlook.time.lowMin).toBeGreaterThan(12)
    expect(outlook.time.highMin).toBeLessThan(16.5)
    expect(outlook.readAgainMin).toBeLessThan(outlook.time.lowMin)
  })

  test('[L61] at the target or past it nothing is to be waited for', () => {
    expect(tell(cooling([...sixReadings, [40, 39.8]]))).toEqual({ kind: 'reached' })
    expect(tell(heating([[0, 75]]))).toEqual({ kind: 'reached' })
  })

  test('[L62] none, one and two readings, a small change and a wide interval are not told, with the time to read again', () => {
    expect(tell(cooling([]))).toEqual({ kind: 'unclear', why: 'FEW_READINGS', readAgainMin: 0 })
    expect(tell(cooling([[0, 70]]))).toMatchObject({ why: 'FEW_READINGS', readAgainMin: 4 })
    expect(tell(cooling(sixReadings.slice(0, 2)))).toMatchObject({ why: 'FEW_READINGS' })
    const small = tell(
      cooling([
        [0, 70],
        [2, 69],
        [4, 68],
      ]),
    )
    expect(small).toMatchObject({ why: 'SMALL_CHANGE', readAgainMin: 6 })
    const wide = tell(
      cooling(
        [
          [0, 72],
          [1, 69.5],
          [2, 66.9],
        ],
        { asymptote: { kind: 'prior', meanC: 22, sdC: 40 } },
      ),
    )
    expect(wide).toMatchObject({ kind: 'unclear', why: 'WIDE' })
  })

  test('[L62] just before the target the interval is told though it is wide against what is left', () => {
    const outlook = tell(cooling([...sixReadings, [31, 42.9], [36, 40.3]]))
    expect(outlook.kind === 'time' && outlook.time.relativeHalfWidth).toBeGreaterThan(0.3)
    expect(outlook.kind === 'time' && outlook.time.highMin).toBeLessThan(4)
  })

  test('[L62] heating leaves out what was read before it had risen by 6 °C, and waits for three readings after that', () => {
    expect(
      tell(
        heating([
          [0, 22],
          [2, 23],
          [4, 27],
          [6, 34],
        ]),
      ),
    ).toMatchObject({ why: 'FEW_READINGS' })
    const lagged = tell(
      heating([
        [0, 22],
        [2, 23],
        [4, 30],
        [6, 38],
        [8, 45],
        [10, 51],
      ]),
    )
    expect(lagged.kind === 'time' && lagged.fit.count).toBe(4)
  })

  test('[L63] a room at the target or above it never lets a vessel cool there', () => {
    expect(tell(cooling([], { targetC: 22 }))).toEqual({ kind: 'never', levelC: 22 })
    expect(tell(cooling(sixReadings, { targetC: 20 }))).toEqual({ kind: 'never', levelC: 22 })
  })

  test('[L63] a plate that is too low is told by how the readings level out', () => {
    const at = (min: number): number => Math.round((62 - 40 * Math.exp(-0.09 * min)) * 10) / 10
    const outlook = tell(heating([0, 3, 6, 10, 14, 19, 25, 32].map((min) => [min, at(min)] as const)))
    expect(outlook.kind).toBe('never')
    expect(outlook.kind === 'never' ? outlook.levelC : 0).toBeCloseTo(62, 0)
  })

  test('[L65] readings that cannot both be right give no time, and are named', () => {
    expect(tell(cooling([...sixReadings, [26, 58.1]]))).toEqual({ kind: 'contradiction', earlier: 5, later: 6 })
    expect(
      tell(
        cooling([
          [0, 72],
          [0.1, 61],
          [5, 60],
          [9, 56],
        ]),
      ),
    ).toEqual({
      kind: 'contradiction',
      earlier: 0,
      later: 1,
    })
    expect(
      tell(
        cooling([
          [3, 70],
          [3, 70],
          [3, 70],
        ]),
      ).kind,
    ).toBe('unclear')
  })
})

describe('on simulated readings', () => {
  const seeds = Array.from({ length: 400 }, (_, index) => 700_000 + index)

  test('[L64] cooling: the error is small, the interval holds what it promises, and few runs are declined', () => {
    const score = scoreOf(seeds.map(coolingRun), studentQuantile)
    expect(score.errorMedianMin).toBeLessThan(1.1)
    expect(score.errorP90Min).toBeLessThan(3.5)
    expect(score.covered).toBeGreaterThan(0.94)
    expect(score.declined).toBeLessThan(0.1)
    expect(score.wronglyNever).toBe(0)
    expect(score.straightLine.errorMedianMin).toBeGreaterThan(4 * score.errorMedianMin)
  })

  test('[L64] heating with lag: the same, with more runs declined', () => {
    const score = scoreOf(
      seeds.map((seed) => heatingRun(seed)),
      studentQuantile,
    )
    expect(score.errorMedianMin).toBeLessThan(1)
    expect(score.errorP90Min).toBeLessThan(3.6)
    expect(score.covered).toBeGreaterThan(0.92)
    expect(score.declined).toBeLessThan(0.25)
    expect(score.wronglyNever).toBeLessThan(0.01)
  })

  test('[L63] a plate that ends at 62 °C is called too low in nine runs of ten, and hardly ever given a time', () => {
    const kinds = seeds.map((seed) => outlookOf(heatingRun(seed, 62), studentQuantile).kind)
    expect(kinds.filter((kind) => kind === 'never').length).toBeGreaterThan(0.9 * seeds.length)
    expect(kinds.filter((kind) => kind === 'time').length).toBeLessThan(0.03 * seeds.length)
  })
})
