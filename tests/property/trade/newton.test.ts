import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  fitNewton,
  type NewtonFit,
  type TimedReading,
  temperatureAt,
  temperatureErrorAt,
} from '../../../src/trade/newton'
import { studentQuantile } from '../../../src/trade/quantile'
import { timeTo } from '../../../src/trade/thermal'
import { propertyRuns } from '../runs'

const law = fc.record({
  asymptoteC: fc.double({ min: 5, max: 30, noNaN: true }),
  amplitudeC: fc.double({ min: 30, max: 70, noNaN: true }),
  ratePerMin: fc.double({ min: 0.005, max: 0.5, noNaN: true }),
  gaps: fc.array(fc.double({ min: 0.3, max: 9, noNaN: true }), { minLength: 3, maxLength: 12 }),
})

function exactReadings({ asymptoteC, amplitudeC, ratePerMin, gaps }: Law) {
  let atMin = 0
  return [0, ...gaps].map((gap): TimedReading => {
    atMin += gap
    return { atMin, temperatureC: asymptoteC + amplitudeC * Math.exp(-ratePerMin * atMin) }
  })
}

interface Law {
  readonly asymptoteC: number
  readonly amplitudeC: number
  readonly ratePerMin: number
  readonly gaps: readonly number[]
}

const fitOf = (readings: readonly TimedReading[], temperatureC: number): NewtonFit => {
  const fit = fitNewton(readings, { kind: 'fixed', temperatureC })
  if (!fit.ok) throw new Error(fit.refusal.code)
  return fit.value
}

describe('the fit', () => {
  test('[L60] exact readings at any spacing give the law they come from, and the moment it meets a target', () => {
    fc.assert(
      fc.property(law, (given) => {
        const readings = exactReadings(given)
        const fit = fitOf(readings, given.asymptoteC)
        expect(fit.ratePerMin / given.ratePerMin).toBeCloseTo(1, 6)
        expect(fit.amplitudeC / given.amplitudeC).toBeCloseTo(1, 6)
        const aboveC = given.amplitudeC * Math.exp(-given.ratePerMin * (fit.lastMin + 7))
        // A target that arithmetic cannot tell from the room is met at no moment.
        fc.pre(aboveC > 1e-6)
        const targetC = given.asymptoteC + aboveC
        const time = timeTo(fit, targetC, studentQuantile)
        expect(time === 'never' ? Number.NaN : time.remainingMin).toBeCloseTo(7, 3)
      }),
      propertyRuns,
    )
  })

  test('[L60] neither the origin of time nor the order of the readings changes anything', () => {
    fc.assert(
      fc.property(law, fc.double({ min: -1e4, max: 1e4, noNaN: true }), (given, shiftMin) => {
        const noisy = exactReadings(given).map(({ atMin, temperatureC }, index) => ({
          atMin,
          temperatureC: temperatureC + (index % 2 === 0 ? 0.3 : -0.4),
        }))
        const plain = fitOf(noisy, given.asymptoteC)
        const moved = fitOf(
          [...noisy].reverse().map((each) => ({ ...each, atMin: each.atMin + shiftMin })),
          given.asymptoteC,
        )
        expect(moved.ratePerMin).toBeCloseTo(plain.ratePerMin, 7)
        expect(temperatureAt(moved, plain.lastMin + shiftMin)).toBeCloseTo(temperatureAt(plain, plain.lastMin), 5)
        expect(temperatureErrorAt(moved, plain.lastMin + shiftMin)).toBeCloseTo(
          temperatureErrorAt(plain, plain.lastMin),
          5,
        )
      }),
      propertyRuns,
    )
  })

  test('[L60] a prior on the asymptote weighs as one reading of its standard deviation, within its limits', () => {
    const readings = [0, 4, 9, 15].map((atMin) => ({ atMin, temperatureC: 20 + 50 * Math.exp(-0.03 * atMin) }))
    const at = (meanC: number, sdC: number) => {
      const fit = fitNewton(readings, { kind: 'prior', meanC, sdC, leastC: 18, mostC: 26 })
      return fit.ok ? fit.value.asymptoteC : Number.NaN
    }
    expect(at(24, 0.01)).toBeCloseTo(24, 2)
    expect(at(24, 1000)).toBeCloseTo(20, 2)
    expect(at(24, 1.5)).toBeGreaterThan(20)
    expect(at(90, 0.01)).toBe(26)
  })

  test('[L65] fewer than two readings, one moment, and what is no number are refused', () => {
    const room = { kind: 'fixed', temperatureC: 21 } as const
    const one = { atMin: 3, temperatureC: 60 }
    expect(fitNewton([one], room)).toMatchObject({ refusal: { code: 'TOO_FEW_READINGS', count: 1 } })
    expect(fitNewton([one, { ...one, temperatureC: 58 }], room)).toMatchObject({
      refusal: { code: 'READINGS_AT_ONE_MOMENT' },
    })
    expect(fitNewton([one, { atMin: 4, temperatureC: Number.NaN }], room)).toMatchObject({
      refusal: { code: 'READING_NOT_A_NUMBER' },
    })
  })

  test('[L65] two readings of one moment among others count as two, and change little', () => {
    const readings = [0, 4, 9, 15].map((atMin) => ({ atMin, temperatureC: 20 + 50 * Math.exp(-0.03 * atMin) }))
    const twice = fitOf([...readings, { atMin: 9, temperatureC: readings[2]?.temperatureC ?? 0 }], 20)
    expect(twice.ratePerMin).toBeCloseTo(0.03, 6)
    expect(twice.count).toBe(5)
  })
})
