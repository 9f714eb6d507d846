import { describe, expect, test } from 'vitest'
import { gatesOf } from '../../../src/batch/gates'
import type { BatchHeader } from '../../../src/batch/header'
import { isDone } from '../../../src/batch/progress'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { formulas, headerFor, lotionHeader, withSteps } from '../../support/formulas'
import { doStep, runUpTo } from '../../support/run'

const open = (header: BatchHeader = lotionHeader()): TestBench => openTestBench(header)

const at = (stop: string, header?: BatchHeader): TestBench => {
  const bench = open(header)
  runUpTo(bench, stop)
  return bench
}

const weigh = (step: string, text: string) =>
  ({ do: 'weigh', step, reading: { mode: 're-tare', readingUg: grams(text) } }) as const

describe('order', () => {
  test('[G1] a step waits for what is before it in its vessel, and a reason lets it pass', () => {
    const bench = open()
    bench.weigh('a-water', '348.85')
    const tooSoon = weigh('a-oat', '5')
    expect(bench.gatesOn(tooSoon)).toEqual(['ORDER'])
    expect(bench.refusal(tooSoon)).toMatchObject({ gates: [{ steps: ['a-slurry-in', 'a-hydrate'], passable: true }] })
    bench.pass('a-oat', 'ORDER')
    bench.weigh('a-oat', '5')
    expect(isDone(bench.state, 'a-oat')).toBe(true)
  })

  test('[G1] no door leads round the order: starting, timing, finishing, measuring, making up, sampling, filling', () => {
    const bench = open()
    for (const intention of [
      { do: 'start-step', step: 'a-heat' },
      { do: 'start-step', step: 'a-oat' },
      { do: 'start-timer', step: 'a-hydrate', label: 'x', minutes: 20 },
      { do: 'adjust', step: 'adjust-ph', netUg: grams('0.5') },
      { do: 'measure', result: { step: 'read-ph', property: 'pH', label: 'pH', value: 5 } },
      { do: 'make-up', step: 'make-up', netUg: grams(10) },
    ] as const)
      expect(bench.gatesOn(intention), JSON.stringify(intention)).toContain('ORDER')
    expect(bench.gatesOn({ do: 'finish-step', step: 'a-heat' })).toContain('ORDER')
    bench.weigh('a-water', '348.85')
    const taken = { vessel: 'main', massUg: grams(30) }
    expect(bench.gatesOn({ do: 'sample', step: 'sample', ...taken, jars: 1, purpose: 'x' })).toContain('ORDER')
    expect(bench.gatesOn({ do: 'fill', step: 'fill', ...taken, units: 1 })).toContain('ORDER')
  })

  test('[G1] work in another vessel is not held up', () => {
    const bench = at('a-hydrate')
    bench.timer('a-hydrate', 20)
    bench.weigh('b-triglyceride', '35')
    expect(bench.gates('b-shea')).toEqual([])
    expect(bench.gates('a-oat')).toEqual(['ORDER'])
  })

  test('[G1] a step is not begun twice, nor by an act that is not its own', () => {
    const bench = at('a-oat')
    expect(bench.refusal({ do: 'start-step', step: 'a-hydrate' }).code).toBe('STEP_DONE')
    expect(bench.refusal({ do: 'finish-step', step: 'a-hydrate' }).code).toBe('STEP_DONE')
    expect(bench.refusal({ do: 'finish-step', step: 'a-oat' }).code).toBe('NOT_FOR_THIS_STEP')
    expect(bench.refusal(weigh('a-heat', '5')).code).toBe('NOT_FOR_THIS_STEP')
    expect(bench.refusal({ do: 'start-step', step: 'no-such' }).code).toBe('NO_SUCH_STEP')
    const sample = { do: 'sample', step: 'a-water', vessel: 'main', massUg: grams(1), jars: 1, purpose: 'x' } as const
    expect(bench.refusal(sample).code).toBe('NOT_FOR_THIS_STEP')
  })
})

describe('temperature', () => {
  const cooled = (): TestBench => at('c-in')

  test('[G2] a heat-sensitive line waits while the vessel is above its limit', () => {
    const bench = cooled()
    bench.read('main', 47.5)
    expect(bench.gatesOn({ do: 'charge', step: 'c-in', residueUg: 0, rinseUg: 0 })).toEqual(['TOO_HOT'])
    expect(bench.refusal({ do: 'charge', step: 'c-in', residueUg: 0, rinseUg: 0 })).toMatchObject({
      gates: [{ vessel: 'main', limitC: 40, lastC: 47.5, material: 'Panthenol 75 %' }],
    })
    bench.read('main', 40)
    expect(bench.gates('c-in')).toEqual([])
  })

  test('[R49] a pass holds for the reading that it was given for, and no longer', () => {
    const bench = cooled()
    const pass = (): void => {
      const [gate] = gatesOf(bench.state, 'c-in', bench.nowMs)
      bench.pass('c-in', gate?.key ?? '')
    }
    bench.read('main', 42)
    pass()
    expect(bench.gates('c-in')).toEqual([])
    bench.read('main', 47.5)
    expect(bench.gates('c-in')).toEqual(['TOO_HOT'])
    pass()
    bench.wait(16)
    expect(bench.gates('c-in')).toEqual([])
    bench.read('main', 39)
    bench.wait(16)
    expect(bench.gates('c-in')).toEqual(['TEMPERATURE_OLD'])
  })

  test('[G2] a reading counts for fifteen minutes, to the minute', () => {
    const bench = cooled()
    bench.read('main', 39)
    bench.wait(15)
    expect(bench.gates('c-in')).toEqual([])
    bench.wait(0.1)
    expect(bench.gates('c-in')).toEqual(['TEMPERATURE_OLD'])
    bench.read('main', 38.5)
    expect(bench.gates('c-in')).toEqual([])
  })

  test('[G2] the formula may state another age', () => {
    const header = lotionHeader()
    const bench = at('c-in', { ...header, revision: { ...header.revision, readingAgeMinutes: 5 } })
    bench.read('main', 39)
    bench.wait(6)
    expect(bench.gates('c-in')).toEqual(['TEMPERATURE_OLD'])
  })

  test('[G2] a vessel that was heated and never read is not known to be cool', () => {
    const straightIn = withSteps(lotionHeader(), (step) => {
      if (step.id.startsWith('b-') || step.id === 'c-cool') return []
      return step.id === 'c-panthenol' ? { ...step, vessel: 'main' } : step
    })
    const bench = at('a-heat', straightIn)
    bench.pass('a-heat', 'TEMPERATURE_UNKNOWN')
    bench.timer('a-heat', 10)
    bench.wait(10)
    bench.finish('a-heat')
    expect(bench.gates('c-panthenol')).toEqual(['TEMPERATURE_UNKNOWN'])
    bench.read('main', 39)
    expect(bench.gates('c-panthenol')).toEqual([])
  })

  test('[G2] without heating, nobody needs a thermometer', () => {
    const bench = openTestBench(headerFor(formulas.gel))
    runUpTo(bench, 'c-in')
    expect(bench.state.vessels.get('main')?.readings).toEqual([])
    expect(bench.gates('c-in')).toEqual([])
  })

  test('[G2] heating is finished at its temperature, cooling below its own', () => {
    const bench = at('a-heat')
    bench.intend({ do: 'start-step', step: 'a-heat' })
    expect(bench.gates('a-heat', 'finish')).toEqual(['TIMER_NOT_STARTED', 'TEMPERATURE_UNKNOWN'])
    bench.read('main', 60)
    expect(bench.gates('a-heat', 'finish')).toEqual(['TIMER_NOT_STARTED', 'NOT_YET_WARM'])
    bench.read('main', 74)
    bench.timer('a-heat', 10)
    bench.wait(10)
    expect(bench.gates('a-heat', 'finish')).toEqual([])
    bench.finish('a-heat')
    runUpTo(bench, 'c-cool')
    bench.intend({ do: 'start-step', step: 'c-cool' })
    bench.read('main', 41)
    expect(bench.gates('c-cool', 'finish')).toEqual(['TOO_HOT'])
    bench.read('main', 40)
    expect(bench.gates('c-cool', 'finish')).toEqual([])
  })

  test('[G3] two phases go together hot enough and near enough', () => {
    const bench = at('b-into-a')
    bench.wait(20)
    expect(bench.gates('b-into-a')).toEqual(['TEMPERATURE_OLD', 'TEMPERATURE_OLD'])
    bench.read('main', 68)
    bench.read('oil', 75)
    expect(bench.gates('b-into-a')).toEqual(['NOT_YET_WARM', 'TOO_FAR_APART'])
    bench.read('main', 70)
    expect(bench.gates('b-into-a')).toEqual([])
    bench.combine('b-into-a')
    const transferred = bench.events.at(-1)?.body
    expect(transferred).toMatchObject({ from: 'oil', to: 'main', fromC: 75, toC: 70 })
  })

  test('[G3] a phase that nobody read is unknown', () => {
    const bench = open()
    for (const id of ['a-water', 'b-triglyceride']) doStep(bench, id)
    expect(bench.gates('b-into-a').filter((code) => code === 'TEMPERATURE_UNKNOWN')).toHaveLength(2)
  })
})
