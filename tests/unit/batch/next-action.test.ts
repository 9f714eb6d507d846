import { describe, expect, test } from 'vitest'
import { nextActionOf } from '../../../src/batch/next-action'
import type { StepKind } from '../../../src/batch/step'
import { openTestBench } from '../../support/batch'
import { benchWith, own } from '../../support/few-steps'
import { lotionHeader } from '../../support/formulas'
import { planned } from '../../support/thermal-bench'

const asked = (kind: StepKind): string => {
  const bench = benchWith(kind)
  return nextActionOf(bench.state, planned(bench, own))
}

describe('[W20] the next action', () => {
  test.each<[StepKind, string]>([
    [{ kind: 'heat', targetC: 75, covered: true }, 'Own to 75 °C, covered'],
    [{ kind: 'cool', targetC: 40, by: 'air' }, 'Own to 40 °C'],
    [{ kind: 'hydrate', minutes: 20, shear: 'low' }, 'Own'],
    [{ kind: 'hold', minutes: 20 }, 'Own'],
    [{ kind: 'measure', check: 'ph' }, 'Measure own'],
    [{ kind: 'clean' }, 'Own'],
  ])('of %o', (kind, words) => {
    expect(asked(kind)).toBe(words)
  })

  test('of hydrating, once it runs, is to look for lumps', () => {
    const bench = benchWith({ kind: 'hydrate', minutes: 20, shear: 'low' })
    bench.timer(own, 20)
    expect(nextActionOf(bench.state, planned(bench, own))).toBe('Own, then look for lumps')
  })

  test('of a weighing is to weigh it, the rest of it, or to choose a way on', () => {
    const bench = openTestBench(lotionHeader())
    const words = () => nextActionOf(bench.state, planned(bench, 'b-squalane'))
    expect(words()).toBe('Weigh squalane')
    bench.weigh('b-squalane', '5')
    expect(words()).toBe('Weigh the rest of squalane')
    bench.weigh('b-squalane', '12')
    expect(words()).toBe('Squalane is over: choose a way on')
  })
})
