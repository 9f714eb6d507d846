import { describe, expect, test } from 'vitest'
import { type Adjuster, adjusterOf, chargePerMole } from '../../../src/trade/adjusters'
import { meanCharge, waterCharge } from '../../../src/trade/charge'

const strongAs = (fraction: number, name: string, more = {}) =>
  adjusterOf(
    [
      { name: 'Aqua', fraction: 1 - fraction },
      { name, fraction },
    ],
    more,
  )

const known = (name: string): Adjuster => {
  const adjuster = strongAs(0.2, name)
  if (!adjuster.ok) throw new Error(`${name}: ${adjuster.refusal.code}`)
  return adjuster.value
}

describe('what an adjuster is', () => {
  test('[L73] an adjuster is known by the INCI name of what is in it, however that is written', () => {
    expect(known('Citric Acid')).toMatchObject({ kind: 'acid', molarMass: 192.12, strength: 0.2 })
    expect(known(' SODIUM HYDROXIDE ')).toMatchObject({ kind: 'base', molarMass: 40 })
    expect(strongAs(0.2, 'Panthenol')).toEqual({ ok: false, refusal: { code: 'ADJUSTER_UNKNOWN' } })
    expect(strongAs(0.2, 'Gluconolactone')).toEqual({ ok: false, refusal: { code: 'ADJUSTER_UNKNOWN' } })
  })

  test('[L73] the strength is what the lot was found to hold, else what the material says', () => {
    expect(strongAs(0.1, 'Lactic Acid', { dissolved: true })).toMatchObject({ value: { strength: 0.1 } })
    expect(strongAs(0.9, 'Lactic Acid', { assay: 0.88 })).toMatchObject({ value: { strength: 0.88 } })
    expect(adjusterOf([{ name: 'Citric Acid', fraction: 1 }])).toMatchObject({ value: { strength: 1 } })
  })

  test('[L73] an adjuster without a strength is refused, not guessed', () => {
    const bare = [{ name: 'Sodium Hydroxide', fraction: 1 }]
    const refused = { ok: false, refusal: { code: 'ADJUSTER_WITHOUT_STRENGTH' } }
    expect(adjusterOf(bare, { dissolved: true })).toEqual(refused)
    expect(adjusterOf([{ name: 'Sodium Hydroxide', fraction: 0 }])).toEqual(refused)
    for (const assay of [0, -1, 18, Number.NaN]) expect(adjusterOf(bare, { assay })).toEqual(refused)
    const both = [...bare, { name: 'Citric Acid', fraction: 0.1 }]
    expect(adjusterOf(both)).toMatchObject({ refusal: { code: 'ADJUSTER_MIXED' } })
  })
})

describe('charges', () => {
  test('[L73] a group is half charged at its pKa, and an acid never turns positive nor a base negative at work', () => {
    expect(meanCharge({ fullCharge: 0, pKas: [3.86] }, 3.86)).toBeCloseTo(-0.5, 12)
    expect(meanCharge({ fullCharge: 1, pKas: [7.76] }, 7.76)).toBeCloseTo(0.5, 12)
    expect(chargePerMole(known('Citric Acid'), 9)).toBeCloseTo(-3, 2)
    expect(chargePerMole(known('Arginine'), 5.5)).toBeCloseTo(1, 2)
    for (const ph of [0, 3, 7, 14]) {
      expect(chargePerMole(known('Sodium Hydroxide'), ph)).toBe(1)
      expect(chargePerMole(known('Hydrochloric Acid'), ph)).toBe(-1)
    }
  })

  test('[L73] water is neutral at pH 7, and its charge follows the protons', () => {
    expect(waterCharge(1, 7)).toBeCloseTo(0, 20)
    expect(waterCharge(2, 3)).toBeCloseTo(2e-3, 10)
    expect(waterCharge(1, 11)).toBeCloseTo(-1e-3, 10)
  })
})
