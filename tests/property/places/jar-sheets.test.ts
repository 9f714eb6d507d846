import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { qrPath } from '../../../src/parts/qr-path'
import { jarSheets, marginsOf, pageMm, placesOn } from '../../../src/places/records/jar-sheets'
import { propertyRuns } from '../runs'

describe('sheets of labels', () => {
  test.each(jarSheets)('[K41] $name: labels, gaps and margins add up to the page', (sheet) => {
    const [width, height] = pageMm[sheet.page]
    const { leftMm, topMm } = marginsOf(sheet)
    const acrossMm = sheet.columns * sheet.widthMm + (sheet.columns - 1) * sheet.gapMm
    expect(2 * leftMm + acrossMm).toBeCloseTo(width, 6)
    expect(2 * topMm + sheet.rows * sheet.heightMm).toBeCloseTo(height, 6)
    expect(leftMm).toBeGreaterThan(3)
    expect(topMm).toBeGreaterThan(3)
    expect(sheet.name).toContain(`${sheet.columns * sheet.rows} on ${sheet.page}`)
    expect(sheet.name).toContain(`${sheet.widthMm} × ${sheet.heightMm} mm`)
  })

  test('[K41] however many labels there are and wherever they begin, none leaves its page or lies on another', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...jarSheets),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 1, max: 44 }),
        (sheet, count, from) => {
          const first = Math.min(from, sheet.columns * sheet.rows)
          const [width, height] = pageMm[sheet.page]
          const places = placesOn(sheet, count, first)
          expect(places).toHaveLength(count)
          for (const { leftMm, topMm } of places) {
            expect(leftMm).toBeGreaterThanOrEqual(0)
            expect(leftMm + sheet.widthMm).toBeLessThanOrEqual(width)
            expect(topMm + sheet.heightMm).toBeLessThanOrEqual(height)
          }
          const taken = new Set(places.map(({ sheet: on, leftMm, topMm }) => `${on} ${leftMm} ${topMm}`))
          expect(taken.size).toBe(count)
          for (const one of places)
            for (const other of places)
              if (one !== other && one.sheet === other.sheet) {
                const apart =
                  Math.abs(one.leftMm - other.leftMm) > sheet.widthMm - 1e-9 ||
                  Math.abs(one.topMm - other.topMm) > sheet.heightMm - 1e-9
                expect(apart).toBe(true)
              }
        },
      ),
      { ...propertyRuns, numRuns: Math.min(propertyRuns.numRuns, 60) },
    )
  })
})

test('[K42] the code of a jar is a square of modules with its three finders, inside a white border', () => {
  const { d, size } = qrPath('https://bench.example/#/records/01a17ca8-ce00-7000-8000-000000000009/25c.28', 2)
  const dark = new Set(
    [...d.matchAll(/M(\d+) (\d+)h(\d+)/g)].flatMap(([, x, y, run]) =>
      Array.from({ length: Number(run) }, (_, at) => `${Number(x) + at} ${y}`),
    ),
  )
  const finderAt = (left: number, top: number) =>
    [0, 6].every((edge) =>
      Array.from({ length: 7 }, (_, at) => at).every((at) => dark.has(`${left + at} ${top + edge}`)),
    )
  expect(finderAt(2, 2) && finderAt(size - 9, 2) && finderAt(2, size - 9)).toBe(true)
  expect(dark.has(`${size - 3} ${size - 3}`) || dark.size > 300).toBe(true)
  for (let at = 0; at < size; at += 1)
    for (const edge of [0, 1, size - 2, size - 1]) {
      expect(dark.has(`${at} ${edge}`)).toBe(false)
      expect(dark.has(`${edge} ${at}`)).toBe(false)
    }
})
