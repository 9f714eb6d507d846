import { describe, expect, test } from 'vitest'
import { phMeterOf } from '../../../src/batch/ph-meter'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const step = 'adjust-ph'

const atPh = (): TestBench => {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, step)
  return bench
}

describe('what a reading takes out', () => {
  test('[G50] the mass taken for a reading leaves the beaker as sampled, and no more than it holds', () => {
    const bench = atPh()
    const beforeUg = bench.massIn('main')
    bench.measure({ step, check: 'ph', property: 'pH', label: 'pH', value: 6.31, sampleUg: grams('10') })
    expect(bench.massIn('main')).toBe(beforeUg - grams('10'))
    expect(bench.state.entries.slice(-2).map(({ event }) => event.kind)).toEqual(['measured', 'sampled'])
    expect(bench.state.steps.get(step)?.finished).toBeUndefined()
    const much = { property: 'pH', label: 'pH', value: 6, vessel: 'main', sampleUg: grams('900') } as const
    expect(bench.refusal({ do: 'measure', result: much }).code).toBe('MORE_THAN_HELD')
  })

  test('[G50] a reading of a jar that was put aside takes nothing out of the beaker', () => {
    const bench = atPh()
    runUpTo(bench, 'fill')
    const beforeUg = bench.massIn('main')
    bench.measure({ property: 'pH', label: 'pH', value: 5.1, vessel: 'main', sampleUg: grams('10') })
    expect(bench.massIn('main')).toBe(beforeUg)
  })
})

describe('the pH meter', () => {
  const calibrate = (bench: TestBench, slopePercent: number): void => {
    const check = { kind: 'pH meter', name: 'pH meter', slopePercent, buffers: [4.01, 7] } as const
    bench.intend({ do: 'check-instrument', check, good: true })
  }

  test('[G51] a slope outside 95–105 %, and a calibration more than a day old, are warned of', () => {
    const bench = atPh()
    expect(phMeterOf(bench.state, bench.nowMs)).toBeNull()
    for (const [slope, worn] of [
      [94.9, true],
      [95, false],
      [105, false],
      [105.1, true],
    ] as const) {
      calibrate(bench, slope)
      expect(phMeterOf(bench.state, bench.nowMs)).toMatchObject({ slopePercent: slope, worn, old: false })
    }
    bench.wait(24 * 60)
    expect(phMeterOf(bench.state, bench.nowMs)).toMatchObject({ old: false })
    bench.wait(1)
    expect(phMeterOf(bench.state, bench.nowMs)).toMatchObject({ old: true })
  })
})
