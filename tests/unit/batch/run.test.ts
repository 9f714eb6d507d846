import { describe, expect, test } from 'vitest'
import { makeUpOf } from '../../../src/batch/make-up'
import { totalsOf } from '../../../src/batch/progress'
import { summaryOf } from '../../../src/batch/summary-of'
import { addedInAll, inSink } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { openTestBench } from '../../support/batch'
import { formulas, headerFor } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const everyWay = Object.entries(formulas).flatMap(([name, formula]) =>
  (['as-you-go', 'weigh-up-first'] as const).map((mode) => [name, mode, formula] as const),
)

describe('a batch from first weighing to the end', () => {
  test.each(everyWay)('[P3] %s, weighing %s, can be done step by step and ends at its size', (_name, mode, formula) => {
    const bench = openTestBench(headerFor(formula, { mode }))
    runUpTo(bench, 'sample')
    expect(bench.state.doubts).toEqual([])
    expect(bench.state.deviations.size).toBe(0)
    expect(totalsOf(bench.state).inUg).toBe(bench.state.totalUg)
    expect(makeUpOf(bench.state, 'main', 'aqua').toAddUg).toBe(0)
    runUpTo(bench)
    expect(summaryOf(bench.state).done).toBe(bench.state.plan.steps.length)
    expect(addedInAll(bench.state.ledger)).toBe(
      heldInAll(bench.state.ledger) + inSink(bench.state.ledger, 'sampled', 'filled'),
    )
    bench.intend({ do: 'close', decision: 'accept' })
    expect(bench.state.stage).toBe('closed')
  })
})
