import { expect, test } from 'vitest'
import { checksOf } from '../../../../src/batch/formula-checks'
import type { Step } from '../../../../src/batch/step'
import { openTestBench } from '../../../support/batch'
import { formulas, headerFor, lotionHeader, withSteps } from '../../../support/formulas'
import { runUpTo } from '../../../support/run'

const saidOf = (formula: (typeof formulas)[keyof typeof formulas], change: (step: Step) => readonly Step[]) => {
  const { revision, materials, balances } = withSteps(headerFor(formula), change)
  const known = new Map(materials.map((material) => [material.id, material]))
  return checksOf(revision, formula, known, { balances }).filter(({ code }) => code === 'PH_NOT_READ_AGAIN')
}

test('[G54] a formula that makes up to weight and reads no pH after it is called out', () => {
  for (const formula of Object.values(formulas)) {
    expect(saidOf(formula, (step) => [step])).toEqual([])
    expect(saidOf(formula, (step) => (step.kind === 'measure' ? [] : [step]))).toMatchObject([
      { severity: 'warn', step: 'make-up' },
    ])
  }
})

test('[G54] what comes after make-up waits for the pH to be read again', () => {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'read-ph')
  const { jars, eachUg } = { jars: 3, eachUg: 30_000_000 }
  const sample = {
    do: 'sample',
    step: 'sample',
    vessel: 'main',
    massUg: jars * eachUg,
    jars,
    purpose: 'checks',
  } as const
  expect(bench.gatesOn(sample)).toEqual(['ORDER'])
  bench.measure({ step: 'read-ph', check: 'ph-made-up', property: 'pH', label: 'pH', value: 5.1 })
  expect(bench.intend(sample)).toHaveLength(1)
})
