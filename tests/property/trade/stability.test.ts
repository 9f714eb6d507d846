import fc from 'fast-check'
import { expect, test } from 'vitest'
import { studentQuantile } from '../../../src/trade/quantile'
import { horizonMonths, type Pull, predictionAt, shelfLifeOf, type Trend, trendOf } from '../../../src/trade/stability'
import { propertyRuns } from '../runs'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Pulls about a line at growing times, and limits on both sides of where it starts. */
const studies = fc
  .record({
    start: number(3, 9),
    drift: number(-0.2, 0.2),
    pulls: fc.array(fc.record({ gap: number(0.2, 6), noise: number(-0.2, 0.2) }), { minLength: 3, maxLength: 12 }),
    room: fc.record({ below: number(0.05, 3), above: number(0.05, 3) }),
  })
  .map(({ start, drift, pulls, room }) => {
    let atMonths = 0
    const all = pulls.map(({ gap, noise }, index): Pull => {
      atMonths += index === 0 ? 0 : gap
      return { atMonths, value: start + drift * atMonths + noise }
    })
    return { pulls: all, limits: { lower: start - room.below, upper: start + room.above } }
  })

const trend = (pulls: readonly Pull[]): Trend => {
  const found = trendOf(pulls)
  if (!found.ok) throw new Error(found.refusal.code)
  return found.value
}

/** The bound on the mean at a time, from the prediction band: the two differ by the 1 under the root. */
const boundsOf = (line: Trend, side: 1 | -1): ((atMonths: number) => number) => {
  const [band, bound] = [studentQuantile(0.975, line.count - 2), studentQuantile(0.95, line.count - 2)]
  return (atMonths) => {
    const { fit, high } = predictionAt(line, atMonths, () => band)
    return fit + side * bound * Math.sqrt(Math.max(0, ((high - fit) / band) ** 2 - line.s ** 2))
  }
}

test('[K30] a limit is met where the bound on the mean first meets it: a search month by month finds none earlier', () => {
  let met = 0
  fc.assert(
    fc.property(studies, ({ pulls, limits }) => {
      const line = trend(pulls)
      const { crossLower, crossUpper, supported, reportable } = shelfLifeOf(line, limits, studentQuantile)
      for (const [cross, limit, side] of [
        [crossLower, limits.lower, -1],
        [crossUpper, limits.upper, 1],
      ] as const) {
        const boundAt = boundsOf(line, side)
        const isOut = (atMonths: number, by: number) => side * (boundAt(atMonths) - limit) > by
        for (let atMonths = 0; atMonths < (cross ?? horizonMonths); atMonths += 0.5)
          expect(isOut(atMonths, 1e-6)).toBe(false)
        if (cross === null || cross === 0) continue
        met += 1
        expect(boundAt(cross)).toBeCloseTo(limit, 5)
      }
      const first = Math.min(crossLower ?? Number.POSITIVE_INFINITY, crossUpper ?? Number.POSITIVE_INFINITY)
      expect(supported ?? Number.POSITIVE_INFINITY).toBe(first)
      expect(reportable).toBeLessThanOrEqual(Math.min(first, 2 * line.lastMonths, line.lastMonths + 12))
    }),
    propertyRuns,
  )
  expect(met).toBeGreaterThan(propertyRuns.numRuns / 10)
})

test('[K31] two pulls, and pulls of one moment, give no trend', () => {
  expect(trendOf([{ atMonths: 0, value: 5 }])).toEqual({ ok: false, refusal: { code: 'TREND_TOO_FEW', count: 1 } })
  expect(trendOf([1, 1, 1].map((atMonths) => ({ atMonths, value: 5 })))).toEqual({
    ok: false,
    refusal: { code: 'TREND_ONE_TIME' },
  })
})

/** Pulls without noise, on their way to a limit that is nothing beside them. */
const straightToNothing = {
  pulls: [
    { atMonths: 0, value: 3 },
    { atMonths: 2.5948294124563485, value: 2.481034117509027 },
    { atMonths: 5.645896108473851, value: 1.870820778305876 },
    { atMonths: 6.1764149242084265, value: 1.7647170151590215 },
  ],
  limits: { lower: 1.021405182655144e-14, upper: 3.05 },
}

test('[K32] neither the unit of a measure nor the order of its pulls changes when it meets its limit', () => {
  fc.assert(
    fc.property(studies, fc.constantFrom(0.001, 1000), ({ pulls, limits }, unit) => {
      const plain = shelfLifeOf(trend(pulls), limits, studentQuantile)
      const scaled = shelfLifeOf(
        trend(pulls.map(({ atMonths, value }) => ({ atMonths, value: value * unit })).reverse()),
        { lower: limits.lower * unit, upper: limits.upper * unit },
        studentQuantile,
      )
      for (const key of ['crossLower', 'crossUpper', 'supported', 'reportable'] as const) {
        const [one, other] = [plain[key], scaled[key]]
        expect(Math.abs((one ?? horizonMonths) - (other ?? horizonMonths))).toBeLessThan(1e-4)
      }
    }),
    { ...propertyRuns, examples: [[straightToNothing, 0.001]] },
  )
})
