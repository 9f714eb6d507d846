import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatMass, roundToStep } from '../../../src/trade/mass'
import { readDecimal, readMass } from '../../../src/trade/number-text'
import { letQsAbsorb, type RemedyLine, scaleTheRest } from '../../../src/trade/remedy'
import { shareOut } from '../../../src/trade/share-out'
import { bandOf, judge } from '../../../src/trade/tolerance'
import { propertyRuns } from '../runs'

const stepUg = fc.constantFrom(100, 500, 1_000, 2_000, 10_000, 100_000, 1_000_000, 5_000_000)
const massUg = fc.integer({ min: 1, max: 2e10 })
const sum = (masses: readonly number[]): number => masses.reduce((total, mass) => total + mass, 0)

test('[L4] shares sum exactly to the amount, and none is above its weight or a microgram off its part', () => {
  const weights = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 9 }), massUg), {
    minLength: 1,
    maxLength: 40,
  })
  fc.assert(
    fc.property(weights, fc.double({ min: 0, max: 1, noNaN: true }), (parts, part) => {
      const totalUg = sum(parts)
      const amountUg = Math.floor(totalUg * part)
      const shares = shareOut(amountUg, parts)
      expect(sum(shares)).toBe(amountUg)
      shares.forEach((share, index) => {
        const weight = parts[index] ?? 0
        expect(share >= 0 && share <= weight).toBe(true)
        if (totalUg > 0) expect(Math.abs(share - (weight * amountUg) / totalUg)).toBeLessThan(1.001)
      })
    }),
    propertyRuns,
  )
})

describe('bands', () => {
  const tolerance = fc.oneof(
    fc.constant(undefined),
    fc.record({ relative: fc.double({ min: 0, max: 0.5, noNaN: true }) }),
    fc.record({ absoluteUg: fc.integer({ min: 0, max: 1e9 }) }),
  )

  test('[W51] a band holds its rounded target, stands on the steps, and is not wider than stated or one step', () => {
    fc.assert(
      fc.property(massUg, tolerance, stepUg, (targetUg, stated, step) => {
        const { lowUg, highUg } = bandOf(targetUg, stated, step)
        const roundedUg = roundToStep(targetUg, step)
        const halfUg =
          stated === undefined ? targetUg * 0.01 : 'relative' in stated ? targetUg * stated.relative : stated.absoluteUg
        expect(lowUg <= roundedUg && roundedUg <= highUg).toBe(true)
        expect([lowUg % step, highUg % step]).toEqual([0, 0])
        expect(highUg - roundedUg).toBeGreaterThanOrEqual(step)
        expect(highUg <= targetUg + halfUg + 1e-3 || highUg === roundedUg + step).toBe(true)
        expect(lowUg >= targetUg - halfUg - 1e-3 || lowUg === Math.max(roundedUg - step, 0)).toBe(true)
      }),
      propertyRuns,
    )
  })

  test('[W52] exactly one judgement holds, and it changes only at the ends of the band', () => {
    fc.assert(
      fc.property(massUg, tolerance, stepUg, fc.integer({ min: 0, max: 3e10 }), (targetUg, stated, step, netUg) => {
        const band = bandOf(targetUg, stated, step)
        const roundedUg = roundToStep(netUg, step)
        const expected = roundedUg < band.lowUg ? 'under' : roundedUg > band.highUg ? 'over' : 'within'
        expect(judge(netUg, band, step)).toBe(expected)
        expect(judge(targetUg, band, step)).toBe('within')
      }),
      propertyRuns,
    )
  })
})

describe('number texts', () => {
  test('[L11] a mass that is shown reads back as the same mass, with either decimal mark', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2e10, max: 2e10 }), stepUg, fc.constantFrom('.', ','), (mass, step, mark) => {
        const shown = formatMass(mass, step, mark)
        expect(readMass(shown)).toEqual({ ok: true, value: roundToStep(mass, step) })
        expect(readMass(` ${shown} g`)).toEqual({ ok: true, value: roundToStep(mass, step) })
      }),
      propertyRuns,
    )
  })

  test('[L12] a decimal reads as JavaScript reads it, with either decimal mark', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e8, max: 1e8 }), fc.integer({ min: 0, max: 9 }), (digits, decimals) => {
        const text = (digits / 10 ** decimals).toFixed(decimals)
        const expected = Number(text) === 0 ? 0 : Number(text)
        expect(readDecimal(text)).toEqual({ ok: true, value: expected })
        expect(readDecimal(text.replace('.', ','))).toEqual({ ok: true, value: expected })
      }),
      propertyRuns,
    )
  })

  test('[L12] no text at all makes the reader throw or give what is not a number', () => {
    const bits = fc.constantFrom('1', '0', '9', '.', ',', '-', '+', '−', ' ', 'g', 'k', '(', '/', 'µ', '°', '\n')
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(bits, { maxLength: 9 }).map((parts) => parts.join('')),
        ),
        (text) => {
          for (const read of [readDecimal(text), readMass(text)])
            if (read.ok) expect(Number.isFinite(read.value)).toBe(true)
        },
      ),
      propertyRuns,
    )
  })
})

describe('remedies', () => {
  const part = fc.record({
    weight: fc.integer({ min: 1, max: 1000 }),
    in: fc.double({ min: 0, max: 1.3, noNaN: true }),
    locked: fc.boolean(),
    stock: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
  })
  const problem = fc
    .record({
      totalUg: massUg.map((mass) => mass + 1e7),
      room: fc.double({ min: 0.9, max: 2, noNaN: true }),
      parts: fc.array(part, { minLength: 2, maxLength: 20 }),
    })
    .map(({ totalUg, room, parts }) => {
      const whole = sum(parts.map(({ weight }) => weight))
      const lines = parts.map((each, index): RemedyLine => {
        const fraction = each.weight / whole
        return {
          id: `${index}`,
          fraction,
          low: fraction * 0.9,
          high: fraction * 1.1,
          massUg: Math.round(fraction * totalUg * each.in),
          locked: each.locked,
          stockUg: each.stock === null ? null : Math.round(totalUg * each.stock),
        }
      })
      return { totalUg, capacityUg: Math.round(totalUg * room), qsIndex: 0, lines }
    })

  test('[R56] what a remedy adds is there to add, sums to its total, fits the vessel and takes nothing out', () => {
    fc.assert(
      fc.property(problem, (given) => {
        for (const remedy of [scaleTheRest(given), letQsAbsorb(given)]) {
          if (!remedy.feasible) continue
          expect(sum(given.lines.map(({ massUg: inUg }) => inUg)) + sum(remedy.additionsUg)).toBe(remedy.totalUg)
          expect(remedy.totalUg).toBeLessThanOrEqual(given.capacityUg * (1 + 1e-9) + given.lines.length)
          remedy.additionsUg.forEach((addUg, index) => {
            const { locked, stockUg } = given.lines[index] ?? { locked: true, stockUg: 0 }
            expect(Number.isSafeInteger(addUg) && addUg >= 0).toBe(true)
            expect(addUg).toBeLessThanOrEqual(locked ? 0 : (stockUg ?? Number.POSITIVE_INFINITY))
          })
        }
      }),
      propertyRuns,
    )
  })

  test('[R51] after scaling every line stands at its fraction to the microgram', () => {
    fc.assert(
      fc.property(problem, (given) => {
        const remedy = scaleTheRest(given)
        if (!remedy.feasible) return
        given.lines.forEach(({ fraction, massUg: inUg }, index) => {
          const finalUg = inUg + (remedy.additionsUg[index] ?? 0)
          expect(Math.abs(finalUg - remedy.factor * fraction * given.totalUg)).toBeLessThanOrEqual(1 + finalUg * 2e-9)
        })
      }),
      propertyRuns,
    )
  })
})
