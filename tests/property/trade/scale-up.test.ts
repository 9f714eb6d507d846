import fc from 'fast-check'
import { expect, test } from 'vitest'
import { largestBatch, sizeForUnits, unitsOf } from '../../../src/trade/scale-up'
import { massOfVolume } from '../../../src/trade/units'
import { propertyRuns } from '../runs'

const shares = fc
  .array(fc.record({ weight: fc.integer({ min: 1, max: 5000 }), stockUg: fc.integer({ min: 0, max: 5e10 }) }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((parts) => {
    const sum = parts.reduce((total, { weight }) => total + weight, 0)
    return parts.map(({ weight, stockUg }, index) => ({ id: `m${index}`, share: weight / sum, stockUg }))
  })
const filling = fc.record({
  unitUg: fc.integer({ min: 1_000_000, max: 500_000_000 }),
  lossFraction: fc.integer({ min: 0, max: 300 }).map((thousandths) => thousandths / 1000),
})

test('[F27] the largest batch takes no more of anything than there is, and a little more takes too much of the one named', () => {
  fc.assert(
    fc.property(shares, (stocked) => {
      const largest = largestBatch(stocked)
      if (!largest) throw new Error('Something is in stock')
      for (const { share, stockUg } of stocked) expect(share * largest.sizeUg).toBeLessThanOrEqual(stockUg + 1e-3)
      const limiting = stocked.find(({ id }) => id === largest.limiting)
      expect((largest.sizeUg + 1) * (limiting?.share ?? 0)).toBeGreaterThan((limiting?.stockUg ?? 0) - 1e-3)
    }),
    propertyRuns,
  )
})

test('[F27] its units with their loss fit in it, and one unit more does not', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2e10 }), filling, (sizeUg, fill) => {
      const units = unitsOf(sizeUg, fill)
      expect(sizeForUnits(units, fill)).toBeLessThanOrEqual(sizeUg)
      expect(sizeForUnits(units + 1, fill)).toBeGreaterThan(sizeUg)
    }),
    propertyRuns,
  )
})

test('[F27] by hand: 200 mL at 0.97 g/mL, 4 % lost, squalane for 7 kg', () => {
  const stocked = [
    { id: 'water', share: 0.9, stockUg: null },
    { id: 'oil', share: 0.07, stockUg: 900_000_000 },
    { id: 'squalane', share: 0.03, stockUg: 210_000_000 },
  ]
  expect(largestBatch(stocked)).toEqual({ limiting: 'squalane', sizeUg: 7_000_000_000 })
  const fill = { unitUg: massOfVolume(200, 0.97), lossFraction: 0.04 }
  expect(fill.unitUg).toBe(194_000_000)
  // 7,000 g × 0.96 ÷ 194 g = 34.6; 34 bottles want 6,870.83 g.
  expect(unitsOf(7_000_000_000, fill)).toBe(34)
  expect(sizeForUnits(34, fill)).toBe(6_870_833_334)
  expect(largestBatch([{ id: 'water', share: 1, stockUg: null }])).toBeNull()
})
