import { describe, expect, test } from 'vitest'
import type { Lot } from '../../../src/batch/catalogue'
import type { Intention } from '../../../src/batch/intention'
import { acceptedChangeUg } from '../../../src/batch/losses'
import { isPlannedFor, looseUg, lossesOf } from '../../../src/batch/lost'
import { openDeviations } from '../../../src/batch/open-deviations'
import { grams, openTestBench } from '../../support/batch'
import { benchWith, own, runFor } from '../../support/few-steps'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const lot = (id: string, materialId: string): Lot => ({
  id,
  materialId,
  code: id.toUpperCase(),
  receivedUg: grams(500),
  status: 'released',
})

describe('[G4] a tare', () => {
  test('is of a vessel that is here, weighs something, and says what stands in it where something does', () => {
    const bench = openTestBench(lotionHeader())
    const tare = { do: 'tare', vessel: 'main', tareUg: grams(312) } as const
    expect(bench.refusal({ ...tare, vessel: 'pot' })).toEqual({ code: 'UNKNOWN_VESSEL_HERE', vessel: 'pot' })
    for (const tareUg of [0, -1]) expect(bench.refusal({ ...tare, tareUg })).toEqual({ code: 'TARE_BAD' })
    expect(bench.intend(tare)[0]?.body).toEqual({ vessel: 'main', tareUg: grams(312) })
    const body = { vessel: 'main', tareUg: grams(312), standsIn: 'a bar' }
    expect(bench.intend({ ...tare, standsIn: 'a bar' })[0]?.body).toEqual(body)
  })
})

describe('[G40] lots are chosen', () => {
  test('of their own material alone; those that Start did not plan with come along whole, once', () => {
    const bench = openTestBench(lotionHeader())
    const [next, wrong, unused] = [lot('next', 'squalane'), lot('wrong', 'shea-butter'), lot('unused', 'squalane')]
    const choose = (lots: readonly string[], opened: readonly Lot[] = [], reason?: string): Intention => ({
      do: 'choose-lots',
      line: 'squalane',
      lots,
      opened,
      ...(reason === undefined ? {} : { reason }),
    })
    const foreign = { code: 'OTHER_MATERIAL', line: 'Squalane' }
    expect(bench.refusal(choose(['next']))).toEqual({ ...foreign, lot: 'next' })
    expect(bench.refusal(choose(['lot-sq-115', 'wrong'], [wrong]))).toEqual({ ...foreign, lot: 'wrong' })
    const body = { line: 'squalane', lots: ['lot-sq-115'] }
    expect(bench.intend(choose(['lot-sq-115']))[0]?.body).toEqual(body)
    const [planned] = bench.state.plan.lines.get('squalane')?.lots ?? []
    const both = ['lot-sq-115', 'next']
    expect(bench.intend(choose(both, planned ? [planned, next, unused] : [], 'drum empty'))[0]?.body).toEqual({
      line: 'squalane',
      lots: both,
      opened: [next],
      reason: 'drum empty',
    })
    expect(bench.intend(choose(['next'], [next]))[0]?.body).toEqual({ line: 'squalane', lots: ['next'] })
  })
})

describe('[G1] a step', () => {
  test('is started where it is there, not done, and nothing stands in its way', () => {
    const bench = openTestBench(lotionHeader())
    const start = (step: string): Intention => ({ do: 'start-step', step })
    expect(bench.refusal(start('none-such'))).toEqual({ code: 'NO_SUCH_STEP', step: 'none-such' })
    expect(bench.gatesOn(start('a-hydrate'))).toEqual(['ORDER'])
    runUpTo(bench, 'a-hydrate')
    expect(bench.refusal(start('a-slurry-in'))).toEqual({ code: 'STEP_DONE', step: 'a-slurry-in' })
    expect(bench.intend(start('a-hydrate'))[0]).toMatchObject({ kind: 'step-started', body: { step: 'a-hydrate' } })
  })

  test('is finished by its own entry where it has one, and once', () => {
    const bench = benchWith({ kind: 'hold', minutes: 20 })
    const finish = (step: string): Intention => ({ do: 'finish-step', step })
    expect(bench.refusal(finish('none-such'))).toEqual({ code: 'NO_SUCH_STEP', step: 'none-such' })
    expect(bench.refusal(finish('a-water'))).toEqual({ code: 'NOT_FOR_THIS_STEP', step: 'a-water' })
    expect(bench.gatesOn(finish(own))).toEqual(['TIMER_NOT_STARTED'])
    runFor(bench, 20)
    expect(bench.intend(finish(own))[0]?.body).toEqual({ step: own })
    expect(bench.refusal(finish(own))).toEqual({ code: 'STEP_DONE', step: own })
  })
})

describe('[R27] what is off and not decided on', () => {
  test('changes what goes in by its mass, up or down; a loss and a barred lot change nothing', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-squalane', '16')
    const [over] = openDeviations(bench.state)
    if (over === undefined) throw new Error('nothing is off')
    expect(over).toMatchObject({ line: 'squalane', direction: 'over', byUg: grams(1) })
    expect(acceptedChangeUg(over)).toBe(grams(1))
    expect(acceptedChangeUg({ ...over, direction: 'under' })).toBe(-grams(1))
    for (const cause of ['loss', 'lot'] as const) expect(acceptedChangeUg({ ...over, cause })).toBe(0)
    bench.settle('accept')
    expect(openDeviations(bench.state)).toEqual([])
  })

  test('is loose while it stands alone in its cup, and planned for once it was decided on', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'c-panthenol')
    bench.weigh('c-panthenol', '7.65')
    expect(openDeviations(bench.state)).toMatchObject([{ inCup: true, byUg: grams('1') }])
    expect(looseUg(bench.state, 'panthenol-75')).toBe(grams('1'))
    expect(looseUg(bench.state, 'squalane')).toBe(0)
    expect(isPlannedFor(bench.state, 'panthenol-75')).toBe(false)
    expect(isPlannedFor(bench.state, 'squalane')).toBe(true)
    const inVessel = openTestBench(lotionHeader())
    inVessel.weigh('b-squalane', '16')
    expect(looseUg(inVessel.state, 'squalane')).toBe(0)
  })

  test('and what was lost of each line is out until it is struck, and planned for once it is put in again', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-melt')
    bench.intend({ do: 'spill', vessel: 'oil', massUg: grams(45), reason: 'knocked over' })
    const lost = lossesOf(bench.state, 'all')
    // Half of what stands in the oil beaker.
    expect(lost.get('squalane')).toBeCloseTo(grams('7.5'), -4)
    expect([...lost.values()].reduce((sum, each) => sum + each, 0)).toBe(grams(45))
    expect(lossesOf(bench.state, 'planned-for').size).toBe(0)
    const spill = bench.events.findLast(({ kind }) => kind === 'spilled')
    bench.strike(spill?.id ?? '')
    expect(lossesOf(bench.state, 'all').size).toBe(0)
  })
})
