import { describe, expect, test } from 'vitest'
import { figuresOf } from '../../../src/batch/batch-figures'
import { type ComparedBatch, compareBatches, goesWith } from '../../../src/batch/compare-batches'
import { demonstrationBatches } from '../../house/demonstration/files'

const benches = demonstrationBatches().filter(
  ({ state }) => state.header.formulaId === 'formula-lotion' && state.stage === 'closed',
)
const lotions: readonly ComparedBatch[] = benches.map(({ state }) => ({
  id: state.header.id,
  code: state.header.code,
  revision: state.header.revision.number,
  openedAtMs: state.openedAtMs,
  figures: figuresOf(state),
}))
const rows = compareBatches(lotions)
const rowOf = (id: string) => rows.find((row) => row.id === id)
const at = (code: string) => lotions.findIndex((batch) => batch.code === code)

describe('batches side by side', () => {
  test('[K22] a dozen batches differ first in what was made otherwise: the gum that had 14 minutes', () => {
    expect(lotions).toHaveLength(12)
    const hydrated = rowOf('step a-hydrate time')
    expect(hydrated?.cells[at('QW-LOT-01-009')]).toMatchObject({ value: 14, target: 20, off: -3 })
    expect(rowOf('check viscosity')?.cells[at('QW-LOT-01-009')]?.value).toBe(8600)
    expect(rowOf('check viscosity')?.cells[at('QW-LOT-01-012')]).toBeNull()
    const spreads = rows.map(({ spread }) => spread)
    expect([...spreads].sort((a, b) => b - a)).toEqual(spreads)
  })

  test('[K22] shares are told in units of their tolerance, and come to the whole less what was not planned', () => {
    for (const [index, { figures }] of lotions.entries()) {
      const strange = benches[index]?.state.unplanned.size ?? 0
      const sum = figures.filter(({ kind }) => kind === 'share').reduce((total, { value }) => total + value, 0)
      if (strange === 0) expect(sum).toBeCloseTo(100, 2)
      else expect(sum).toBeLessThan(100)
    }
    const shea = rowOf('share shea-butter')
    for (const cell of shea?.cells ?? []) {
      expect(cell?.target).toBeGreaterThan(0)
      expect(cell?.off).toBeCloseTo(((cell?.value ?? 0) - (cell?.target ?? 0)) / oneOf('share shea-butter'), 6)
    }
  })

  test('[K22] the order of the batches changes no row but its cells, and one batch alone differs in nothing', () => {
    const turned = compareBatches([...lotions].reverse())
    expect(turned.map(({ id, spread }) => [id, spread])).toEqual(rows.map(({ id, spread }) => [id, spread]))
    expect(turned[0]?.cells).toEqual([...(rows[0]?.cells ?? [])].reverse())
    expect(compareBatches(lotions.slice(0, 1))).toEqual([])
  })

  test('[K23] what goes with the viscosity: sorted by size, with n, without what never changes', () => {
    const answers = goesWith(rows, 'check viscosity')
    expect(answers.length).toBeGreaterThan(3)
    expect(answers.some(({ row }) => row.id === 'check viscosity')).toBe(false)
    const sizes = answers.map(({ rho }) => Math.abs(rho))
    expect([...sizes].sort((a, b) => b - a)).toEqual(sizes)
    expect(answers.every(({ n }) => n === 11)).toBe(true)
    const made = [1, 2, 3, 4, 5].map((value): ComparedBatch => batchOf(value))
    const told = goesWith(compareBatches(made), 'check y')
    expect(told.map(({ row, rho, isChance }) => [row.id, rho, isChance])).toEqual([['share x', 1, false]])
    expect(goesWith(compareBatches(made.slice(0, 4)), 'check y')[0]?.isChance).toBe(true)
  })
})

const oneOf = (id: string): number => lotions[0]?.figures.find((figure) => figure.id === id)?.one ?? Number.NaN

const batchOf = (value: number): ComparedBatch => ({
  id: `b${value}`,
  code: `B-${value}`,
  revision: 1,
  openedAtMs: value,
  figures: [
    { id: 'share x', kind: 'share', label: 'X', unit: '%', value, target: 3, one: 1 },
    { id: 'share same', kind: 'share', label: 'Same', unit: '%', value: 7, target: 7, one: 1 },
    { id: 'check y', kind: 'check', label: 'Y', unit: '', value: value ** 3, one: 1 },
  ],
})
