import { describe, expect, it } from 'vitest'
import { labelOf, labelText, portionsAsMade, portionsOf } from '../../../src/batch/label-draft'
import { openTestBench } from '../../support/batch'
import { material, qs, revision, share, water } from '../../support/formula-maker'
import { lotionHeader } from '../../support/formulas'

const scent = material('scent', {
  inci: [{ name: 'Parfum', fraction: 1 }],
  allergens: ['Linalool', 'Citral'],
  allergenParts: [{ name: 'Linalool', fraction: 0.05 }],
})
const white = material('white', { inci: [{ name: 'CI 77891', fraction: 1 }] })
const blend = material('blend', {
  inci: [
    { name: 'Glycerin', fraction: 0.5 },
    { name: 'WATER', fraction: 0.5 },
  ],
})

describe('a label draft', () => {
  it('[F28] falls to 1 %, then any order, then colourants; names are summed, allergens named by contact', () => {
    const of = revision([qs(), share('blend', 4), share('white', 3), share('scent', 0.15), share('gum', 1)])
    const materials = new Map([water, scent, white, blend, material('gum')].map((each) => [each.id, each]))
    const draft = labelOf(portionsOf(of, materials), 'leave-on')
    expect(labelText(draft)).toBe('Aqua, Glycerin, gum, Parfum, Linalool, CI 77891')
    expect(draft.above.map(({ name, fraction }) => [name, Number(fraction.toFixed(9))])).toEqual([
      ['Aqua', 0.9385],
      ['Glycerin', 0.02],
    ])
    expect(draft.allergensUnknown).toEqual([{ material: 'scent', names: ['Citral'] }])
    expect(labelText(labelOf(portionsOf(of, materials), 'rinse-off'))).not.toContain('Linalool')
  })

  it('[F28] a material without INCI names is named with its share, and nothing is made up for it', () => {
    const nameless = material('nameless', { inci: [] })
    const draft = labelOf(
      [
        { material: nameless, share: 0.2 },
        { material: water, share: 0.8 },
      ],
      'leave-on',
    )
    expect(labelText(draft)).toBe('Aqua')
    expect([draft.unnamed, draft.unnamedMaterials]).toEqual([0.2, ['nameless']])
  })

  it('[F29] of a batch as made counts what is in, what was not planned too, and not what was lost', () => {
    const bench = openTestBench(lotionHeader())
    bench.intend({ do: 'tare', vessel: 'main', tareUg: 300_000_000 })
    bench.weigh('a-water', '381.35')
    bench.weigh('a-phytate', '1')
    const added = {
      name: 'Cornflower extract',
      materialId: 'scent',
      vessel: 'main',
      netUg: 20_000_000,
      reason: 'trial',
    }
    bench.intend({ do: 'add-unplanned', ...added })
    bench.intend({ do: 'add-unplanned', name: 'A pinch of salt', vessel: 'main', netUg: 1_000_000, reason: 'trial' })
    bench.intend({ do: 'spill', vessel: 'main', massUg: 100_000_000, reason: 'knocked over' })
    const portions = portionsAsMade(bench.state, new Map([['scent', scent]]))
    const totalG = 381.35 + 1 + 20 + 1
    const draft = labelOf(portions, 'leave-on')
    expect(draft.above.map(({ name }) => name)).toEqual(['Aqua', 'Parfum'])
    expect(draft.above[1]?.fraction).toBeCloseTo(20 / totalG, 6)
    expect(draft.unnamedMaterials).toEqual(['A pinch of salt'])
    expect(portions.reduce((sum, each) => sum + each.share, 0)).toBeCloseTo(1, 9)
  })
})
