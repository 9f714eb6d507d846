import { describe, expect, test } from 'vitest'
import type { Material } from '../../../src/batch/catalogue'
import type { PlannedLine } from '../../../src/batch/plan'
import { dilutionOf, premixesFor } from '../../../src/batch/premix-recipe'
import { grams } from '../../support/batch'
import { fineBalance, material, qs, share } from '../../support/formula-maker'

const planned = (
  id: string,
  g: number,
  more: Partial<Material> = {},
  over: Partial<PlannedLine> = {},
): PlannedLine => ({
  line: share(id, 1),
  phase: 'A',
  material: material(id, more),
  fraction: 0.01,
  targetUg: grams(g),
  balance: fineBalance,
  lots: [],
  ...over,
})

const dye = planned('dye', 0.05)
const goodFromUg = grams(0.2)
const carriersOf = (...lines: readonly PlannedLine[]) =>
  premixesFor(dye, [dye, ...lines], goodFromUg).map(({ into, oneIn }) => `${into} ${oneIn}`)

describe('[F24] a dilution is proposed', () => {
  test('in the q.s. line first, then in the liquids by what there is of them, in all that serve', () => {
    const water = planned('water', 0.8, {}, { line: qs() })
    expect(carriersOf(planned('glycerin', 2), planned('ester', 40), water)).toEqual([
      'water 10',
      'ester 10',
      'ester 20',
      'ester 50',
      'ester 100',
      'glycerin 10',
      'glycerin 20',
    ])
  })

  test('only as strong as its carrier has more than it brings, and as its balance weighs it well', () => {
    // 1 in 10 is 0.5 g, 0.45 g of it the carrier.
    expect(carriersOf(planned('glycerin', 0.45))).toEqual([])
    expect(carriersOf(planned('glycerin', 0.451))).toEqual(['glycerin 10'])
    expect(premixesFor(dye, [planned('glycerin', 2)], grams(0.5)).map(({ oneIn }) => oneIn)).toEqual([10, 20])
    expect(premixesFor(dye, [planned('glycerin', 2)], grams(0.501)).map(({ oneIn }) => oneIn)).toEqual([20])
  })

  test('in no solid, nothing of another phase, no adjuster, nor what keeps, scents or washes', () => {
    const many = { targetUg: grams(40) }
    for (const form of ['liquid', 'solution'] as const) expect(carriersOf(planned('oil', 40, { form }))).toHaveLength(4)
    expect(carriersOf(planned('wax', 40, { form: 'solid' }))).toEqual([])
    expect(carriersOf(planned('oil', 40, {}, { phase: 'B' }))).toEqual([])
    expect(carriersOf(planned('none', 0))).toEqual([])
    const acid = { ...share('acid', 1), amount: { kind: 'as-needed', expected: 0.01, min: 0, max: 0.02 } } as const
    expect(carriersOf(planned('acid', 40, {}, { ...many, line: acid }))).toEqual([])
    for (const what of ['Preservative', 'Fragrance', 'Anionic surfactant'])
      expect(carriersOf(planned('other', 40, { function: what }))).toEqual([])
  })

  test('with what is weighed to make it, on the balance, a tenth more than goes in', () => {
    expect(premixesFor(dye, [planned('glycerin', 2)], goodFromUg)[0]).toEqual({
      line: 'dye',
      into: 'glycerin',
      oneIn: 10,
      neatUg: grams(0.2),
      thinnerUg: grams(1.8),
      doseUg: grams(0.5),
      carrierLeftUg: grams(1.55),
    })
    const more = planned('dye', 0.4)
    expect(premixesFor(more, [planned('glycerin', 20)], goodFromUg)[0]).toMatchObject({
      neatUg: grams(0.44),
      thinnerUg: grams(3.96),
    })
  })

  test('and is made anew from the line that is weighed of it', () => {
    // 4 g of 1 in 10 hold 0.4 g; a tenth more is 0.44 g.
    expect(dilutionOf(planned('dye', 4), 10)).toEqual({ neatUg: grams(0.44), thinnerUg: grams(3.96) })
  })
})
