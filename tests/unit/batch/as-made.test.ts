import { describe, expect, it } from 'vitest'
import { madeOtherwise } from '../../../src/batch/as-made'
import { grams, openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const told = (bench: ReturnType<typeof openTestBench>) =>
  madeOtherwise(bench.state).map(({ id, beyond, ...rest }) => ({ ...rest, beyond }))

describe('a batch as it was made', () => {
  it('[F37] made to the letter it differs in nothing beyond what the formula allows', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench)
    expect(madeOtherwise(bench.state).filter(({ beyond }) => beyond)).toEqual([])
  })

  it('[F37] tells shares, times, temperatures, additions and steps left out, each against what was planned', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'a-hydrate')
    bench.wait(1)
    bench.timer('a-hydrate', 20)
    bench.wait(35)
    bench.intend({ do: 'acknowledge-timer', timer: bench.step('a-hydrate').timer ?? '' })
    bench.finish('a-hydrate')
    bench.intend({
      do: 'add-unplanned',
      name: 'Glycerin',
      vessel: 'main',
      netUg: grams(5),
      reason: 'softer feel',
    })
    runUpTo(bench, 'b-squalane')
    bench.weigh('b-squalane', '15.9')
    bench.settle('accept')
    runUpTo(bench, 'b-homogenise')
    bench.intend({ do: 'skip-step', step: 'b-homogenise', reason: 'the tool is broken' })
    runUpTo(bench)
    const all = told(bench)
    expect(all.filter(({ beyond }) => beyond)).toMatchObject([
      { kind: 'share', line: 'squalane', planned: 0.03 },
      { kind: 'unplanned', title: 'Glycerin', vessel: 'main', after: 'a-hydrate', reason: 'softer feel' },
      { kind: 'step', step: 'a-hydrate', field: 'minutes', planned: 20, made: 35 },
      { kind: 'step-out', step: 'b-homogenise' },
    ])
    const share = (name: string) => {
      const found = all.find(({ title }) => title === name)
      return found?.kind === 'share' ? found.made : found?.kind === 'unplanned' ? found.share : Number.NaN
    }
    expect(share('Squalane')).toBeCloseTo(15.9 / 505.9, 3)
    expect(share('Glycerin')).toBeCloseTo(5 / 505.9, 3)
  })

  it('[F37] a line that was left out is told as that, and lies beyond', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-cetearyl')
    bench.intend({ do: 'skip-step', step: 'b-cetearyl', reason: 'the tub is empty' })
    runUpTo(bench, 'c-cool')
    bench.settle('accept')
    runUpTo(bench)
    const line = 'cetearyl-alcohol'
    expect(madeOtherwise(bench.state).filter(({ id }) => id === line || id === 'b-cetearyl')).toEqual([
      { id: line, kind: 'line-out', line, title: 'Cetearyl alcohol', planned: 0.025, beyond: true },
    ])
  })

  it('[F37] an adjuster is held to the least and the most of it, any other line to its band', () => {
    const made = (acid: string, squalane: string) => {
      const bench = openTestBench(lotionHeader())
      runUpTo(bench, 'b-squalane')
      bench.weigh('b-squalane', squalane)
      runUpTo(bench, 'adjust-ph')
      if (Number(acid) > 0) {
        bench.pass('adjust-ph', 'ABOVE_MAXIMUM')
        bench.intend({ do: 'adjust', step: 'adjust-ph', netUg: grams(acid) })
      }
      return madeOtherwise(bench.state).filter(({ id }) => ['lactic-acid-10', 'squalane'].includes(id))
    }
    const row = { kind: 'share', line: 'lactic-acid-10', title: 'Lactic acid 10 %', planned: 0.005 }
    expect(made('0', '15')).toMatchObject([expect.anything(), { ...row, made: 0, beyond: false }])
    expect(made('7', '15.1')).toMatchObject([
      { line: 'squalane', title: 'Squalane', planned: 0.03, beyond: false },
      { ...row, made: expect.closeTo(7 / 495, 3), beyond: false },
    ])
    expect(made('8', '15.1')).toMatchObject([
      { line: 'squalane', beyond: false },
      { ...row, beyond: true },
    ])
  })
})
