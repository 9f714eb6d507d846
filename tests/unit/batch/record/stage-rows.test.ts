import { describe, expect, test } from 'vitest'
import { stageRows } from '../../../../src/batch/record-stages.ts'
import { grams, openTestBench } from '../../../support/batch.ts'
import { benchWith, own } from '../../../support/few-steps.ts'
import { lotionHeader } from '../../../support/formulas.ts'
import { runUpTo } from '../../../support/run.ts'

describe('[E66] a stage', () => {
  test('of a phase has its targets, its weighings and the moment of the last of them', () => {
    const bench = benchWith({ kind: 'clean' })
    const waterUg = bench.step('a-water').netUg
    const row = { kind: 'weighed', atMs: expect.any(Number) }
    expect(stageRows(bench.state)).toEqual([
      { ...row, of: 'A', theoreticalUg: bench.step('a-water').targets.at(-1), actualUg: waterUg },
      { ...row, of: 'B', atMs: bench.nowMs - 60_000, theoreticalUg: grams('15'), actualUg: grams('15') },
    ])
  })

  test('of two vessels has all that stood in them with the rinse, and what came to the second', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    const bothUg = bench.massIn('main') + bench.massIn('oil')
    bench.combine(own, { residue: '0.4', rinse: '2' })
    expect(stageRows(bench.state).at(-1)).toEqual({
      kind: 'moved',
      of: 'Oil beaker',
      into: 'Main beaker',
      atMs: bench.nowMs,
      theoreticalUg: bothUg + grams('2'),
      actualUg: bothUg + grams('1.6'),
    })
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(stageRows(bench.state).map(({ kind }) => kind)).toEqual(['weighed', 'weighed'])
  })

  test('is no cup that was tipped out whole, but one that kept something', () => {
    const tipped = (residue: string) => {
      const bench = benchWith({ kind: 'charge', cup: 'oil', rate: 'stream' })
      bench.charge(own, { residue })
      return stageRows(bench.state).filter(({ kind }) => kind === 'moved')
    }
    expect(tipped('0')).toEqual([])
    expect(tipped('0.1')).toMatchObject([{ of: 'Oil beaker', into: 'Main beaker' }])
  })

  test('of making up has the batch as planned and what the vessel holds; of filling what went into units', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'make-up')
    const makeUp = bench.state.plan.steps.find(({ step }) => step.kind === 'make-up')
    expect(makeUp).toBeDefined()
    runUpTo(bench, 'fill')
    const heldUg = bench.massIn('main')
    bench.intend({ do: 'fill', step: 'fill', vessel: 'main', massUg: heldUg - grams('3'), units: 4 })
    const [made, filled] = stageRows(bench.state).slice(-2)
    expect(made).toMatchObject({ kind: 'made up', of: 'Main beaker', theoreticalUg: grams('500') })
    expect(filled).toEqual({
      kind: 'filled',
      of: 'Main beaker',
      atMs: bench.nowMs,
      theoreticalUg: heldUg,
      actualUg: heldUg - grams('3'),
    })
  })

  test('stands where it came in time, moves among phases', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'a-slurry-in')
    bench.charge('a-slurry-in', { residue: '0.1' })
    runUpTo(bench, 'b-melt')
    expect(stageRows(bench.state).map(({ of }) => of)).toEqual(['Slurry cup', 'A', 'B'])
  })
})
