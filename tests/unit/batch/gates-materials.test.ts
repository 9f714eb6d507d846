import { describe, expect, test } from 'vitest'
import type { Lot } from '../../../src/batch/catalogue'
import type { BatchHeader } from '../../../src/batch/header'
import { isDone } from '../../../src/batch/progress'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader, withLots } from '../../support/formulas'
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
