import { describe, expect, test } from 'vitest'
import type { Lot } from '../../../src/batch/catalogue'
import type { BatchHeader } from '../../../src/batch/header'
import { isDone } from '../../../src/batch/progress'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { formulas, headerFor, lotionHeader, withLots, withSteps } from '../../support/formulas'
import { doStep, runUpTo } from '../../support/run'

const open = (header: BatchHeader = lotionHeader()): TestBench => openTestBench(header)

const at = (stop: string, header?: BatchHeader): TestBench => {
  const bench = open(header)
  runUpTo(bench, stop)
  return bench
}

const firstLot = (line: string, change: Partial<Lot>): BatchHeader =>
  withLots(lotionHeader(), line, (lots) => lots.map((lot) => ({ ...lot, ...change })))

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

describe('tare, lots and cups', () => {
  test('[G4] a vessel without a tare asks for it before the first weighing; a cup does not', () => {
    const header = lotionHeader()
    const vessels = header.vessels.map(({ tareUg: _unknown, ...vessel }) => vessel)
    const bench = open({ ...header, vessels })
    expect(bench.gates('a-water')).toEqual(['NO_TARE'])
    expect(bench.gates('a-propanediol')).toEqual([])
    expect(bench.refusal({ do: 'tare', vessel: 'main', tareUg: 0 }).code).toBe('TARE_BAD')
    bench.intend({ do: 'tare', vessel: 'main', tareUg: grams('312.46'), standsIn: 'propeller' })
    expect(bench.gates('a-water')).toEqual([])
  })

  test('[G4] an expired lot and one in quarantine are asked about, each once', () => {
    const bench = open(firstLot('tocopherol', { expires: '2026-11-23', status: 'quarantine' }))
    expect(bench.gates('c-tocopherol')).toEqual(['LOT_EXPIRED', 'LOT_QUARANTINED'])
    bench.pass('c-tocopherol', 'LOT_EXPIRED:lot-to-038')
    expect(bench.gates('c-tocopherol')).toEqual(['LOT_QUARANTINED'])
    bench.pass('c-tocopherol', 'LOT_QUARANTINED:lot-to-038')
    bench.weigh('c-tocopherol', '1.5')
    expect(isDone(bench.state, 'c-tocopherol')).toBe(true)
  })

  test('[G4] the last day of use is a whole day', () => {
    expect(open(firstLot('tocopherol', { expires: '2026-11-24' })).gates('c-tocopherol')).toEqual([])
  })

  test.each(['tocopherol', 'lot-to-038'])(
    '[G4] an expired lot that was kept at Start (about %s) does not ask again',
    (about) => {
      const header = firstLot('tocopherol', { expires: '2026-11-01' })
      const kept = [{ code: 'LOT_EXPIRED', about, reason: 'retested, in order' }]
      expect(open({ ...header, kept }).gates('c-tocopherol')).toEqual([])
      expect(
        open({ ...header, kept: [{ code: 'LOT_EXPIRED', about: 'aqua', reason: 'x' }] }).gates('c-tocopherol'),
      ).toEqual(['LOT_EXPIRED'])
    },
  )

  test('[G4] a lot of another material is refused, wherever it is named', () => {
    const bench = open()
    expect(bench.refusal({ ...weigh('b-shea', '10'), lot: 'lot-sq-115' })).toEqual({
      code: 'OTHER_MATERIAL',
      lot: 'lot-sq-115',
      line: 'Shea butter',
    })
    expect(bench.refusal({ do: 'choose-lots', line: 'shea-butter', lots: ['lot-sq-115'] }).code).toBe('OTHER_MATERIAL')
    const late = at('adjust-ph')
    expect(late.refusal({ do: 'adjust', step: 'adjust-ph', netUg: 1000, lot: 'lot-sq-115' }).code).toBe(
      'OTHER_MATERIAL',
    )
    runUpTo(late, 'make-up')
    expect(late.refusal({ do: 'make-up', step: 'make-up', netUg: 1000, lot: 'lot-sq-115' }).code).toBe('OTHER_MATERIAL')
  })

  test('[G4] a lot that is opened in the middle of a line is used with its own assay and dates, and can be taken back', () => {
    const bench = open()
    const [planned] = bench.state.plan.lines.get('panthenol-75')?.lots ?? []
    if (!planned) throw new Error('no lot')
    const next: Lot = { ...planned, id: 'lot-next', code: 'NEXT', assay: 0.6, expires: '2026-11-01' }
    const choose = { do: 'choose-lots', line: 'panthenol-75', lots: [planned.id, next.id] } as const
    expect(bench.refusal(choose).code).toBe('OTHER_MATERIAL')
    expect(bench.refusal({ ...choose, opened: [{ ...next, materialId: 'aqua' }] }).code).toBe('OTHER_MATERIAL')
    bench.weigh('c-panthenol', '3.65')
    const before = bench.state
    bench.intend({ ...choose, opened: [next] })
    expect(before.plan.lines.get('panthenol-75')?.lots).toHaveLength(1)
    expect(bench.gatesOn({ ...weigh('c-panthenol', '3.75'), lot: 'lot-next' })).toEqual(['LOT_EXPIRED'])
    bench.pass('c-panthenol', 'LOT_EXPIRED:lot-next')
    bench.weigh('c-panthenol', '3.75', { lot: 'lot-next' })
    expect(bench.step('c-panthenol').countedUg).toBe(grams('6.65'))
    expect(isDone(bench.state, 'c-panthenol')).toBe(true)
    bench.strike(bench.events.find((event) => event.kind === 'lot-chosen')?.id ?? '')
    expect(bench.state.plan.lines.get('panthenol-75')?.lots).toHaveLength(1)
    expect(bench.massIn('cool-cup')).toBe(grams('7.4'))
  })

  test('[G4] a line whose lots were taken away says so', () => {
    const bench = open()
    bench.intend({ do: 'choose-lots', line: 'shea-butter', lots: [] })
    expect(bench.gates('b-shea')).toEqual(['NO_LOT'])
    bench.intend({ do: 'choose-lots', line: 'shea-butter', lots: ['lot-sb-056'] })
    expect(bench.gates('b-shea')).toEqual([])
  })

  test('[G5] an empty cup cannot be tipped in, and nobody can pass that', () => {
    const bench = open()
    for (const step of ['a-propanediol', 'a-gum', 'a-water', 'a-phytate'])
      bench.intend({ do: 'skip-step', step, reason: 'to see' })
    expect(bench.gates('a-slurry-in')).toEqual(['CUP_EMPTY'])
    const pass = { do: 'pass-gate', step: 'a-slurry-in', gate: 'CUP_EMPTY', detail: 'x', reason: 'please' } as const
    expect(bench.refusal(pass)).toMatchObject({ code: 'GATE', gates: [{ code: 'CUP_EMPTY', passable: false }] })
    // Even an entry that says it was passed opens nothing.
    bench.step('a-slurry-in').gatesPassed.set('CUP_EMPTY', 'forced')
    expect(bench.gates('a-slurry-in')).toEqual(['CUP_EMPTY'])
  })

  test('[G5] an open deviation is passed by no reason', () => {
    const bench = open()
    bench.weigh('b-emulsifier', '18.62')
    expect(bench.gatesOn(weigh('b-emulsifier', '1'))).toEqual(['DEVIATION_OPEN'])
    const pass = { do: 'pass-gate', step: 'b-emulsifier', gate: 'DEVIATION_OPEN', detail: '', reason: 'x' } as const
    expect(bench.refusal(pass).code).toBe('GATE')
  })

  test('[G5] a cup has an open life, counted from its first addition', () => {
    const bench = open()
    runUpTo(bench, 'c-panthenol')
    bench.weigh('c-panthenol', '6.65')
    bench.wait(100)
    for (const step of ['c-preservative', 'c-tocopherol']) doStep(bench, step)
    bench.read('main', 30)
    bench.wait(18)
    bench.read('main', 30)
    expect(bench.gates('c-in')).toEqual([])
    bench.wait(0.1)
    expect(bench.gates('c-in')).toEqual(['CUP_TOO_OLD'])
    bench.pass('c-in', 'CUP_TOO_OLD')
    bench.charge('c-in')
    expect(isDone(bench.state, 'c-in')).toBe(true)
  })

  test('[G6] an adjustment is finished inside its window, and its maximum is asked about', () => {
    const bench = at('adjust-ph')
    expect(bench.gates('adjust-ph', 'finish')).toContain('OUTSIDE_LIMITS')
    bench.measure({ step: 'adjust-ph', check: 'ph', value: 6.2 })
    bench.intend({ do: 'adjust', step: 'adjust-ph', netUg: grams(7) })
    expect(bench.gatesOn({ do: 'adjust', step: 'adjust-ph', netUg: grams('0.6') })).toEqual(['ABOVE_MAXIMUM'])
    bench.intend({ do: 'adjust', step: 'adjust-ph', netUg: grams('0.5') })
    bench.pass('adjust-ph', 'ABOVE_MAXIMUM')
    bench.intend({ do: 'adjust', step: 'adjust-ph', netUg: grams('0.1') })
    expect(bench.step('adjust-ph')).toMatchObject({ netUg: grams('7.6') })
    expect(bench.gates('adjust-ph', 'finish')).toEqual(['OUTSIDE_LIMITS'])
    bench.measure({ step: 'adjust-ph', check: 'ph', value: 5.3 })
    expect(bench.gates('adjust-ph', 'finish')).toEqual([])
    bench.finish('adjust-ph')
    expect(isDone(bench.state, 'adjust-ph')).toBe(true)
  })

  test('[G6] a gate is passed with a reason, for a step that is there', () => {
    const bench = open()
    const pass = { do: 'pass-gate', step: 'a-oat', gate: 'ORDER', detail: '', reason: ' ' } as const
    expect(bench.refusal(pass).code).toBe('REASON_MISSING')
    expect(bench.refusal({ ...pass, step: 'nowhere', reason: 'x' }).code).toBe('NO_SUCH_STEP')
  })
})
