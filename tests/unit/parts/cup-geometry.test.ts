import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cupLevels, cupShape, patternOf, targetPart } from '../../../src/parts/cup-geometry.ts'

const g = (grams: number) => grams * 1_000_000

describe('the levels in a cup', () => {
  it('draws the target at 76 % of the inside and the contents in proportion to it', () => {
    const levels = cupLevels({ strata: [{ letter: 'A', massUg: g(250) }], targetUg: g(500) }, 100)
    expect(levels.targetPx).toBeCloseTo(100 * (1 - targetPart), 9)
    expect(levels.bands).toHaveLength(1)
    expect(levels.bands[0]?.heightPx).toBeCloseTo(38, 9)
    expect(levels.surfacePx).toBeCloseTo(62, 9)
  })

  it('lays what is being weighed on top of what is recorded', () => {
    const levels = cupLevels({ strata: [{ letter: 'A', massUg: g(20) }], liveUg: g(2), targetUg: g(22) }, 100)
    expect(levels.live?.topPx).toBeCloseTo(24, 9)
    expect(levels.live?.heightPx).toBeCloseTo((100 * 0.76 * 2) / 22, 9)
    expect(levels.surfacePx).toBeCloseTo(24, 9)
  })

  it('joins neighbours of one phase and keeps phases apart', () => {
    const strata = [
      { letter: 'A', massUg: g(1) },
      { letter: 'A', massUg: g(2) },
      { letter: 'B', massUg: g(3) },
      { letter: 'A', massUg: g(4) },
    ]
    expect(cupLevels({ strata, targetUg: g(20) }, 100).bands.map(({ letter }) => letter)).toEqual(['A', 'B', 'A'])
  })

  it('stacks bands without a gap and never above the brim, whatever is in', () => {
    const stratum = fc.record({ letter: fc.constantFrom('A', 'B', 'C', 'D'), massUg: fc.nat(2_000_000_000) })
    fc.assert(
      fc.property(
        fc.array(stratum, { maxLength: 12 }),
        fc.nat(1_000_000_000),
        fc.nat(1_000_000_000),
        (strata, targetUg, liveUg) => {
          const { bands, live, surfacePx } = cupLevels({ strata, targetUg, liveUg }, 180)
          let bottomPx = 180
          for (const band of live ? [...bands, live] : bands) {
            expect(band.topPx + band.heightPx).toBeCloseTo(bottomPx, 6)
            expect(band.topPx).toBeGreaterThanOrEqual(0)
            bottomPx = band.topPx
          }
          if (surfacePx !== undefined) expect(surfacePx).toBeCloseTo(bottomPx, 6)
        },
      ),
    )
  })

  it('draws the cap only from 80 % of the capacity upward', () => {
    const half = { strata: [], targetUg: g(500) }
    expect(cupLevels({ ...half, capacityUg: g(800) }, 100).capacityPx).toBeUndefined()
    expect(cupLevels({ ...half, capacityUg: g(600) }, 100).capacityPx).toBeCloseTo(100 * (1 - (600 / 500) * 0.76), 9)
  })

  it('shows an empty cup without a surface, and a cup without a target by its capacity, without a line', () => {
    const empty = cupLevels({ strata: [], targetUg: 0 }, 100)
    expect(empty).toEqual({
      bands: [],
      live: undefined,
      surfacePx: undefined,
      targetPx: undefined,
      capacityPx: undefined,
    })
    const some = cupLevels({ strata: [{ letter: 'A', massUg: g(30) }], targetUg: 0, capacityUg: g(100) }, 100)
    expect(some.surfacePx).toBeCloseTo(70, 9)
  })
})

describe('a phase in a cup', () => {
  it('[A3] is told by its pattern as well as by its colour, in turn', () => {
    expect(['A', 'B', 'C', 'D', 'E', 'F', '', '7'].map(patternOf)).toEqual([
      'plain',
      'hatched',
      'dotted',
      'plain',
      'hatched',
      'dotted',
      'plain',
      'plain',
    ])
  })
})

describe('the shape of a cup', () => {
  it('keeps every part inside its picture, the rim 5.5 % of the height', () => {
    for (const [width, height] of [
      [170, 196],
      [52, 60],
      [600, 700],
    ] as const) {
      const { rim, inside } = cupShape(width, height)
      expect(rim.heightPx).toBeCloseTo(Math.max(height * 0.055, 6), 9)
      expect(rim.widthPx).toBeLessThan(width)
      expect(inside.rightPx).toBeLessThan(width)
      expect(inside.topPx + inside.heightPx).toBeLessThan(height)
    }
  })
})
