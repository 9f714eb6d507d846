import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hornHeight, hornLabels, hornPath, hornScale, thinEnd } from '../../../src/parts/horn-geometry.ts'
import { widthEm } from '../../../src/parts/text-width.ts'

const gum = { netUg: 1_830_000, targetUg: 2_000_000, lowUg: 1_980_000, highUg: 2_020_000 }
const grams = (massUg: number) => (massUg / 1e6).toFixed(massUg === 0 ? 0 : 2)

/** Targets from 1 mg to 30 kg, bands from a ten-thousandth of the target to half of it. */
const masses = fc
  .record({
    targetUg: fc.integer({ min: 1000, max: 30_000_000_000 }),
    width: fc.double({ min: 1e-4, max: 0.5, noNaN: true }),
  })
  .map(({ targetUg, width }) => {
    const halfUg = Math.max(Math.round(targetUg * width), 1)
    return { netUg: 0, targetUg, lowUg: targetUg - halfUg, highUg: targetUg + halfUg }
  })

describe('the approach scale', () => {
  it('[A1] stands the target at four fifths and a left-over of one half-band at ln 2 of the whole before it', () => {
    const scale = hornScale(gum, 1000)
    expect(scale(2_000_000)).toBeCloseTo(800, 9)
    expect(scale(1_980_000)).toBeCloseTo(800 * (1 - Math.log(2) / Math.log(101)), 9)
    expect(scale(2_020_000)).toBeCloseTo(800 * (1 + Math.log(2) / Math.log(101)), 9)
    expect(scale(0)).toBeCloseTo(0, 9)
  })

  it('[A1] gives the last 5 % of the target two fifths of the way at ±1 %, and more than half at ±0.1 %', () => {
    const scale = hornScale(gum, 1000)
    const part = (scale(2_000_000) - scale(1_900_000)) / scale(2_000_000)
    expect(part).toBeCloseTo(Math.log(6) / Math.log(101), 9)
    const tight = hornScale({ ...gum, lowUg: 1_998_000, highUg: 2_002_000 }, 1000)
    expect((tight(2_000_000) - tight(1_900_000)) / tight(2_000_000)).toBeCloseTo(Math.log(51) / Math.log(1001), 9)
  })

  it('[A1] rises with the mass, and keeps both gates inside the picture, for any target and band', () => {
    fc.assert(
      fc.property(masses, fc.double({ min: 0, max: 1, noNaN: true }), (given, part) => {
        const scale = hornScale(given, 570)
        const massUg = given.highUg * part
        expect(scale(massUg)).toBeGreaterThanOrEqual(0)
        expect(scale(massUg + given.targetUg / 1000)).toBeGreaterThan(scale(massUg))
        expect(scale(given.highUg)).toBeLessThanOrEqual(570 * 0.95 + 1e-6)
        expect(scale(given.lowUg)).toBeLessThan(scale(given.highUg))
      }),
    )
  })

  it('stays finite for a band of no width and for a target of nought', () => {
    const point = hornScale({ netUg: 0, targetUg: 5_000_000, lowUg: 5_000_000, highUg: 5_000_000 }, 570)
    expect(point(5_000_000)).toBeCloseTo(456, 6)
    const nothing = hornScale({ netUg: 0, targetUg: 0, lowUg: 0, highUg: 0 }, 570)
    expect(Number.isFinite(nothing(0)) && Number.isFinite(nothing(1_000_000))).toBe(true)
  })

  it('is the same picture at ten times the batch', () => {
    const tenfold = { netUg: 0, targetUg: 20_000_000, lowUg: 19_800_000, highUg: 20_200_000 }
    for (const massUg of [0, 1_000_000, 1_830_000, 2_090_000])
      expect(hornScale(tenfold, 570)(massUg * 10)).toBeCloseTo(hornScale(gum, 570)(massUg), 9)
  })
})

describe('the outline of the horn', () => {
  it('opens from 24 % of its height to all of it at the lower gate, and not beyond', () => {
    expect(hornHeight(0, 388, 60)).toBeCloseTo(60 * thinEnd, 9)
    expect(hornHeight(388, 388, 60)).toBeCloseTo(60, 9)
    expect(hornHeight(500, 388, 60)).toBeCloseTo(60, 9)
    expect(hornHeight(194, 388, 60)).toBeCloseTo(60 * (thinEnd + (1 - thinEnd) / 4), 9)
  })

  it('is a closed path without broken numbers at any length', () => {
    for (const toPx of [0.1, 3, 100, 388, 389, 570]) {
      const path = hornPath(toPx, 388, 60, 14)
      expect(path).toMatch(/^M[-\d.]+ /)
      expect(path.endsWith('Z')).toBe(true)
      expect(path).not.toMatch(/NaN|Infinity|undefined/)
    }
  })
})

describe('the labels under the horn', () => {
  it('names nought, 90 %, 95 % and both gates where there is room', () => {
    expect(hornLabels(gum, 570, 18, grams).map(({ text }) => text)).toEqual(['0', '1.80', '1.90', '1.98', '2.02'])
  })

  it('drops 95 % first where there is not', () => {
    expect(hornLabels(gum, 345, 18, grams).map(({ text }) => text)).toEqual(['0', '1.80', '1.98', '2.02'])
  })

  it('[A2] never lets two labels touch or leave the picture on the right, and always shows both gates', () => {
    fc.assert(
      fc.property(masses, fc.integer({ min: 300, max: 900 }), (given, widthPx) => {
        const labels = hornLabels(given, widthPx, 18, grams)
        expect(labels.filter(({ kind }) => kind === 'gate')).toHaveLength(2)
        const ends = labels
          .map(({ text, middlePx }) => ({ from: middlePx - widthEm(text) * 9, to: middlePx + widthEm(text) * 9 }))
          .sort((a, b) => a.from - b.from)
        for (const [index, { to }] of ends.entries()) {
          expect(to).toBeLessThanOrEqual(widthPx + 1e-6)
          const next = ends[index + 1]
          if (next) expect(next.from - to).toBeGreaterThan(8)
        }
      }),
    )
  })
})
