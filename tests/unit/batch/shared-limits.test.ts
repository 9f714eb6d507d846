import { describe, expect, test } from 'vitest'
import { needsSolver, type RemedyOffer, remediesFor, remediesWithin } from '../../../src/batch/deviation'
import { recordOf } from '../../../src/batch/record'
import { overWhat, plannedShare } from '../../../src/batch/shared-limits'
import { materials } from '../../house/demonstration/materials'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { formulas, headerFor, lotionHeader, newest, planOf } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const phenoxyethanol = 'most-phenoxyethanol'
const limitOf = (offer: RemedyOffer | undefined, id: string) => offer?.rows.find(({ line }) => line === id)

/** A preservative from the wrong shelf into the oil phase: what it holds counts with what is still to come. */
function wrongPreservative(netUg: number): TestBench {
  const material = materials.find(({ id }) => id === 'phenoxyethanol-ehg')
  if (!material) throw new Error('no preservative')
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'b-squalane')
  const add = { do: 'add-unplanned', name: material.name, materialId: material.id, material } as const
  bench.intend({ ...add, vessel: 'oil', netUg, reason: 'wrong tub', most: material.useLevel?.max ?? 1 })
  return bench
}

describe('limits over several lines', () => {
  test('[R43] each says what it is over and what the formula comes to', () => {
    const lines = [...planOf(headerFor(formulas.shampoo, { size: '1000' })).lines.values()]
    const shares = (newest(formulas.shampoo).sharedLimits ?? []).map((limit) => [
      overWhat(limit),
      Number((plannedShare(limit, lines) * 100).toFixed(3)),
    ])
    expect(shares).toEqual([
      ['anionic active matter of all lines', 6],
      ['amphoteric active matter of all lines', 3.6],
      ['non-ionic active matter of all lines', 3],
      ['all lines that are preservative', 0.65],
    ])
  })

  test('[R43] something foreign counts with what it holds, and the limit that it breaks is named', () => {
    const bench = wrongPreservative(grams(2))
    expect(bench.deviation()).toMatchObject({ cause: 'foreign' })
    const accept = remediesFor(bench.state, bench.deviation().id).find(({ remedy }) => remedy === 'accept')
    expect(limitOf(accept, phenoxyethanol)).toMatchObject({ name: 'Phenoxyethanol', from: 'shared', breaks: true })
    expect(limitOf(accept, phenoxyethanol)?.after).toBeCloseTo((0.9 * 7) / 502, 4)
  })

  test('[R43] the ways that promise every limit keep it, and weighed out the record says so', async () => {
    const bench = wrongPreservative(grams(2))
    expect(needsSolver(bench.state)).toBe(true)
    const [first] = await remediesWithin(bench.state, bench.deviation().id)
    if (!first?.feasible) throw new Error('no way on')
    expect(first.breaks).toBe(0)
    expect(limitOf(first, phenoxyethanol)?.after ?? 0).toBeLessThanOrEqual(0.01 + 1e-9)
    const { remedy, totalUg, heldBackUg, targets } = first
    const figures = { totalUg, heldBackUg, targets }
    bench.intend({ do: 'settle', deviation: bench.deviation().id, remedy, reason: 'diluted', figures })
    runUpTo(bench, 'sample')
    const [row] = recordOf(bench.state).limits
    expect(row).toMatchObject({ limit: { id: phenoxyethanol }, verdict: 'within' })
    expect(row?.asMade).toBeGreaterThan(0.009)
  })

  test('[R43] active matter of a class is a limit like any other: it binds before the line does', () => {
    const bench = openTestBench(headerFor(formulas.shampoo, { size: '1000' }))
    runUpTo(bench, 'b-sarcosinate')
    bench.weigh('b-sarcosinate', '216')
    const accept = remediesFor(bench.state, bench.deviation().id).find(({ remedy }) => remedy === 'accept')
    expect(limitOf(accept, 'active-anionic')).toMatchObject({
      from: 'shared',
      name: 'Active matter, anionic',
      breaks: true,
    })
  })

  test('[R43] a batch with nothing in it is within no limit yet', () => {
    expect(recordOf(openTestBench(lotionHeader()).state).limits).toMatchObject([{ verdict: 'none' }])
  })
})
