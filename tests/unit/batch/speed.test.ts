import { describe, expect, test } from 'vitest'
import { recordOf } from '../../../src/batch/record'
import { grams, openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

/** Homogenise: 3,000–5,000 rpm for 3 min; its time is over. */
function atHomogenise() {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'b-homogenise')
  bench.timer('b-homogenise', 3)
  bench.wait(4)
  return bench
}

const finish = (toolRpm: number, toolMm?: number) =>
  ({ do: 'finish-step', step: 'b-homogenise', toolRpm, ...(toolMm === undefined ? {} : { toolMm }) }) as const

describe('the speed of a tool', () => {
  test('[L84] inside the range of the formula, both ends included, it is written down without a question', () => {
    for (const rpm of [3000, 4200, 5000]) {
      const bench = atHomogenise()
      bench.intend(finish(rpm))
      expect(recordOf(bench.state).steps.find(({ planned }) => planned.id === 'b-homogenise')?.toolRpm).toBe(rpm)
    }
  })

  test('[L84] outside it is asked about, and another speed is asked about anew', () => {
    const bench = atHomogenise()
    const refusal = bench.refusal(finish(2400))
    expect(refusal).toMatchObject({
      code: 'GATE',
      gates: [{ code: 'SPEED_OUTSIDE', rpm: 2400, range: { min: 3000, max: 5000 } }],
    })
    bench.pass('b-homogenise', 'SPEED_OUTSIDE:2400')
    expect(bench.gatesOn(finish(9000))).toEqual(['SPEED_OUTSIDE'])
    bench.intend(finish(2400))
    expect(bench.step('b-homogenise').finished?.how).toBe('done')
  })

  test('[L84] what no bench tool turns at, or is across, is refused', () => {
    const bench = atHomogenise()
    for (const rpm of [0, -200, 0.5, 400_000, Number.NaN]) expect(bench.refusal(finish(rpm)).code).toBe('SPEED_ABSURD')
    for (const mm of [0, -3, 1, 2800, Number.NaN]) expect(bench.refusal(finish(4000, mm)).code).toBe('DIAMETER_ABSURD')
  })

  test('[E62] the record holds how fast it turned and how far it is across', () => {
    const bench = atHomogenise()
    bench.intend(finish(4000, 25))
    const row = recordOf(bench.state).steps.find(({ planned }) => planned.id === 'b-homogenise')
    expect(row).toMatchObject({ toolRpm: 4000, toolMm: 25 })
    expect(bench.massIn('main')).toBeGreaterThan(grams(1))
  })
})
