import { describe, expect, test } from 'vitest'
import type { Line } from '../../../src/batch/formula'
import { type PremixChoice, unmixed, withPremixes } from '../../../src/batch/premix'
import { premixMaterial } from '../../../src/batch/premix-material'
import { material, qs, revision, share, step, water, weigh } from '../../support/formula-maker'

const materials = new Map([water, ...['oil', 'dye', 'trace'].map((id) => material(id))].map((each) => [each.id, each]))

const lines: readonly Line[] = [
  qs(),
  share('oil', 5, { range: { min: 0.04, max: 0.06 } }),
  share('dye', 0.2, { range: { min: 0.001, max: 0.003 }, tolerance: { absoluteUg: 2_000 }, assayAssumed: 0.5 }),
  share('trace', 0.1),
]

const formula = revision(lines, {
  procedure: [
    weigh('water'),
    weigh('oil'),
    { ...weigh('dye'), after: ['weigh-oil'] },
    weigh('trace'),
    step('heat', { kind: 'heat', targetC: 75 }),
  ],
})

const mix = (...choices: readonly PremixChoice[]) => withPremixes(formula, choices, materials)

const made = (...choices: readonly PremixChoice[]) => {
  const mixed = mix(...choices)
  if (!mixed.ok) throw new Error(mixed.refusal.code)
  const all = mixed.value.revision.phases.flatMap((phase) => phase.lines)
  return { ...mixed.value, line: (id: string) => all.find((line) => line.id === id) }
}

describe('[F23] a dilution is refused', () => {
  test.each<[readonly PremixChoice[], object]>([
    [[{ line: 'dye', into: 'dye', oneIn: 10 }], { code: 'PREMIX_CIRCULAR', lines: ['dye'] }],
    [
      [
        { line: 'dye', into: 'trace', oneIn: 10 },
        { line: 'trace', into: 'dye', oneIn: 10 },
      ],
      { code: 'PREMIX_CIRCULAR', lines: ['dye', 'trace'] },
    ],
    [
      [
        { line: 'oil', into: 'dye', oneIn: 10 },
        { line: 'dye', into: 'trace', oneIn: 10 },
        { line: 'trace', into: 'dye', oneIn: 10 },
      ],
      { code: 'PREMIX_CIRCULAR', lines: ['dye', 'trace'] },
    ],
    [
      [
        { line: 'dye', into: 'trace', oneIn: 10 },
        { line: 'trace', into: 'water', oneIn: 10 },
      ],
      { code: 'PREMIX_OF_PREMIX', line: 'dye', into: 'trace' },
    ],
    [[{ line: 'none', into: 'water', oneIn: 10 }], { code: 'PREMIX_LINE_GONE', line: 'none' }],
    [[{ line: 'dye', into: 'none', oneIn: 10 }], { code: 'PREMIX_LINE_GONE', line: 'dye' }],
    [[{ line: 'water', into: 'oil', oneIn: 10 }], { code: 'PREMIX_NOT_A_SHARE', line: 'water' }],
    // 0.2 % in 26 parts brings 5 % of oil: all that there is.
    [[{ line: 'dye', into: 'oil', oneIn: 26 }], { code: 'PREMIX_TOO_MUCH', line: 'dye', into: 'oil' }],
  ])('%#: in itself, in a dilution, in what is not there, in too little', (choices, refusal) => {
    expect(mix(...choices)).toEqual({ ok: false, refusal })
  })

  test('of a line that it uses up, where binary numbers leave a hair of it', () => {
    const used = revision([qs(), share('oil', 0.27), share('trace', 0.03)])
    expect(withPremixes(used, [{ line: 'trace', into: 'oil', oneIn: 10 }], materials)).toEqual({
      ok: false,
      refusal: { code: 'PREMIX_TOO_MUCH', line: 'trace', into: 'oil' },
    })
  })

  test('where its material, or what thins it, is not known', () => {
    const without = (id: string) => new Map([...materials].filter(([each]) => each !== id))
    const choice = { line: 'dye', into: 'oil', oneIn: 10 }
    for (const id of ['dye', 'oil'])
      expect(withPremixes(formula, [choice], without(id))).toEqual({
        ok: false,
        refusal: { code: 'PREMIX_LINE_GONE', line: 'dye' },
      })
    expect(withPremixes(formula, [choice], without('trace')).ok).toBe(true)
  })
})

describe('[F25] a batch weighed with a dilution', () => {
  test('weighs so many times as much of it, with range, band and assay; what it brings comes off its carrier', () => {
    const { line, premixes, materials: own } = made({ line: 'dye', into: 'oil', oneIn: 10 })
    expect(line('dye')).toEqual({
      id: 'dye',
      materialId: 'premix:dye',
      amount: { kind: 'fraction', fraction: 0.02 },
      range: { min: 0.01, max: 0.03 },
      tolerance: { absoluteUg: 20_000 },
      assayAssumed: 0.05,
    })
    expect(line('oil')).toEqual({
      id: 'oil',
      materialId: 'oil',
      amount: { kind: 'fraction', fraction: 0.032 },
      range: { min: 0.022, max: 0.042 },
    })
    expect([line('water'), line('trace')]).toEqual([lines[0], lines[3]])
    expect(premixes).toEqual([{ line: 'dye', into: 'oil', oneIn: 10, materialId: 'dye' }])
    expect(own.map(({ id }) => id)).toEqual(['premix:dye'])
  })

  test('takes nothing off a q.s. carrier, which gives way by itself, and invents no range', () => {
    const { line } = made({ line: 'trace', into: 'water', oneIn: 20 })
    expect(line('water')).toEqual(lines[0])
    expect(line('trace')).toEqual({
      id: 'trace',
      materialId: 'premix:trace',
      amount: { kind: 'fraction', fraction: 0.02 },
    })
  })

  test('makes it in a cup of its own, in a step that its weighing waits for, and in no other', () => {
    const { revision: mixed } = made({ line: 'dye', into: 'oil', oneIn: 10 })
    expect(mixed.vessels.at(-1)).toEqual({ id: 'premix:dye', name: 'Pre-mix, dye', kind: 'cup', holds: 'dye in oil' })
    expect(mixed.procedure).toEqual([
      weigh('water'),
      weigh('oil'),
      {
        id: 'premix:weigh-dye',
        kind: 'note',
        vessel: 'premix:dye',
        phase: 'A',
        title: 'Make the pre-mix',
        text: 'dye in oil, 1 in 10, stirred until it is even.',
      },
      { ...weigh('dye'), after: ['weigh-oil', 'premix:weigh-dye'] },
      weigh('trace'),
      step('heat', { kind: 'heat', targetC: 75 }),
    ])
  })

  test('brings the more of its carrier the weaker the lot is', () => {
    const mixed = withPremixes(formula, [{ line: 'dye', into: 'oil', oneIn: 10 }], materials, new Map([['dye', 0.9]]))
    const oil = mixed.ok && mixed.value.revision.phases[0]?.lines.find(({ id }) => id === 'oil')
    expect(oil ? oil.amount : null).toEqual({ kind: 'fraction', fraction: 0.03 })
  })

  test('is counted by its parts', () => {
    const shares = new Map([
      ['dye', 0.02],
      ['oil', 0.032],
    ])
    const parts = unmixed(shares, [
      { line: 'dye', into: 'oil', oneIn: 10 },
      { line: 'none', into: 'oil', oneIn: 10 },
    ])
    expect(parts.get('dye')).toBeCloseTo(0.002, 12)
    expect(parts.get('oil')).toBeCloseTo(0.05, 12)
    expect(parts.size).toBe(2)
    expect(unmixed(new Map([['dye', 0.02]]), [{ line: 'dye', into: 'oil', oneIn: 10 }]).get('oil')).toBeCloseTo(
      0.018,
      12,
    )
  })
})

describe('[F25] a dilution as a material', () => {
  const neat = material('dye', {
    function: 'Colourant',
    inci: [
      { name: 'CI 77492', fraction: 0.9 },
      { name: 'Aqua', fraction: 0.1 },
    ],
    activeMatter: { fraction: 0.9, class: 'anionic' },
    useLevel: { min: 0.001, max: 0.2 },
    phWindow: { min: 3, max: 9 },
    maxTemperatureC: 60,
    allergens: ['Linalool'],
    allergenParts: [{ name: 'Linalool', fraction: 0.01 }],
    costPerKg: 100,
  })
  const thin = {
    ...water,
    form: 'liquid',
    costPerKg: 10,
    maxTemperatureC: 90,
    allergens: ['Linalool', 'Citral'],
  } as const

  test('has of either what it holds of it, and bears what both bear', () => {
    expect(premixMaterial('dye', neat, thin, 10)).toEqual({
      id: 'premix:dye',
      name: 'dye, 1 in 10',
      function: 'Colourant',
      form: 'liquid',
      inci: [
        { name: 'Aqua', fraction: expect.closeTo(0.91, 12) },
        { name: 'CI 77492', fraction: expect.closeTo(0.09, 12) },
      ],
      activeMatter: { fraction: expect.closeTo(0.09, 12), class: 'anionic' },
      useLevel: { min: 0.01, max: 1 },
      phWindow: { min: 3, max: 9 },
      maxTemperatureC: 60,
      allergens: ['Linalool', 'Citral'],
      allergenParts: [{ name: 'Linalool', fraction: expect.closeTo(0.001, 12) }],
      costPerKg: expect.closeTo(19, 9),
    })
  })

  test('states nothing that neither states, and no price where one is missing', () => {
    const plain = { id: 'premix:dye', name: 'dye, 1 in 10', function: '' }
    const inci = [
      { name: 'Aqua', fraction: 0.9 },
      { name: 'dye', fraction: 0.1 },
    ]
    expect(premixMaterial('dye', material('dye'), water, 10)).toEqual({ ...plain, inci })
    expect(premixMaterial('dye', material('dye', { costPerKg: 1 }), water, 10)).toEqual({ ...plain, inci })
    expect(premixMaterial('dye', material('dye'), { ...water, costPerKg: 1 }, 10)).toEqual({ ...plain, inci })
  })
})
