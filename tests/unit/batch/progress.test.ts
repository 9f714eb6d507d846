import { describe, expect, test } from 'vitest'
import {
  bandOfStep,
  isDone,
  isOver,
  isWaitedFor,
  nextStep,
  openSteps,
  statusOf,
  strataOf,
  targetOf,
  totalsOf,
  totalsOfPhase,
  vesselNow,
  vesselTargetUg,
} from '../../../src/batch/progress'
import { endVessel, lastVessel } from '../../../src/batch/remedy-problem'
import { usedLots } from '../../../src/batch/used-lots'
import { grams, openTestBench } from '../../support/batch'
import { benchWith, own } from '../../support/few-steps'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'
import { planned } from '../../support/thermal-bench'

describe('[W20] how a step stands', () => {
  test('it waits, is open, runs, is done, is left out', () => {
    const bench = openTestBench(lotionHeader())
    expect(statusOf(bench.state, 'none-such')).toBe('waiting')
    expect(statusOf(bench.state, 'a-hydrate')).toBe('waiting')
    expect(planned(bench, 'a-hydrate').waitsFor).toContain('a-slurry-in')
    expect(isWaitedFor(bench.state, 'a-slurry-in')).toBe(true)
    runUpTo(bench, 'a-hydrate')
    expect(statusOf(bench.state, 'a-hydrate')).toBe('open')
    bench.timer('a-hydrate', 20)
    expect(statusOf(bench.state, 'a-hydrate')).toBe('running')
    expect(isDone(bench.state, 'a-hydrate')).toBe(false)
    bench.intend({ do: 'skip-step', step: 'a-hydrate', reason: 'hydrated before' })
    expect(statusOf(bench.state, 'a-hydrate')).toBe('skipped')
    expect(isDone(bench.state, 'a-hydrate')).toBe(true)
    expect(isDone(bench.state, 'none-such')).toBe(false)
  })

  test('a weighing is begun short of its band, done in it, over past it until that is settled', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-squalane')
    expect(bandOfStep(bench.state, planned(bench, 'b-squalane'))).toMatchObject({
      lowUg: grams('14.85'),
      highUg: grams('15.15'),
    })
    bench.weigh('b-squalane', '14.84')
    expect(statusOf(bench.state, 'b-squalane')).toBe('part')
    bench.weigh('b-squalane', '0.01')
    expect(statusOf(bench.state, 'b-squalane')).toBe('done')
    expect(isOver(bench.state, planned(bench, 'b-squalane'))).toBe(false)
    bench.weigh('b-shea', '10.5')
    expect(statusOf(bench.state, 'b-shea')).toBe('over')
    expect(isOver(bench.state, planned(bench, 'b-shea'))).toBe(true)
    expect(nextStep(bench.state)?.id).toBe('b-shea')
    bench.settle('accept')
    expect(statusOf(bench.state, 'b-shea')).toBe('done')
    expect(isOver(bench.state, planned(bench, 'b-shea'))).toBe(true)
    expect(targetOf(bench.state, 'b-shea')).toBe(grams('10'))
    expect(targetOf(bench.state, 'b-melt')).toBeUndefined()
  })

  test('next comes what is over, begun, idle, open, and last what only runs its time', () => {
    const bench = openTestBench(lotionHeader())
    expect(nextStep(bench.state)?.id).toBe('a-water')
    bench.weigh('b-squalane', '5')
    expect(nextStep(bench.state)?.id).toBe('b-squalane')
    bench.weigh('b-squalane', '10')
    const waiting = benchWith({ kind: 'hold', minutes: 20 })
    waiting.timer(own, 20)
    expect(openSteps(waiting.state).map(({ id }) => id)).toEqual([own])
    expect(nextStep(waiting.state)?.id).toBe(own)
    waiting.wait(20)
    waiting.intend({ do: 'acknowledge-timer', timer: waiting.step(own).timer ?? '' })
    waiting.finish(own)
    expect(nextStep(waiting.state)).toBeNull()
  })

  test('what runs without a clock comes before what is open, what runs by one after it', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'a-hydrate')
    expect(nextStep(bench.state)?.id).toBe('a-hydrate')
    const timer = bench.timer('a-hydrate', 20)
    expect(nextStep(bench.state)?.id).toBe('b-triglyceride')
    bench.intend({ do: 'acknowledge-timer', timer })
    expect(nextStep(bench.state)?.id).toBe('a-hydrate')
  })
})

describe('[L8] what is in', () => {
  test('is what was put in, less what evaporated and was thrown away, beside what was due', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    const waterUg = bench.massIn('main')
    const all = { dueUg: waterUg + grams('15'), totalUg: grams('500') }
    expect(totalsOf(bench.state)).toEqual({ ...all, inUg: waterUg + grams('15') })
    bench.intend({ do: 'discard-cup', vessel: 'oil', reason: 'fell in' })
    expect(totalsOf(bench.state)).toEqual({ inUg: waterUg, dueUg: waterUg, totalUg: grams('500') })
  })

  test('of a phase is what was weighed for its lines, against their targets', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-squalane', '5')
    bench.weigh('b-shea', '10')
    expect(totalsOfPhase(bench.state, 'B')).toEqual({ inUg: grams('15'), targetUg: grams('90'), lines: 5 })
    expect(totalsOfPhase(bench.state, 'C')).toMatchObject({ inUg: 0, lines: 3 })
  })

  test('stands in a vessel by phase, the first at the bottom, what was not planned on top', () => {
    const bench = benchWith({ kind: 'combine', from: 'oil' })
    const waterUg = bench.massIn('main')
    bench.combine(own)
    bench.intend({ do: 'add-unplanned', name: 'Oat', vessel: 'main', netUg: grams(1), reason: 'softer' })
    expect(strataOf(bench.state, 'main')).toEqual([
      { letter: 'A', massUg: waterUg },
      { letter: 'B', massUg: grams('15') },
      { letter: '+', massUg: grams('1') },
    ])
    expect(strataOf(bench.state, 'oil')).toEqual([])
    expect(vesselNow(bench.state, 'oil')).toBe('main')
    expect(vesselNow(bench.state, 'main')).toBe('main')
  })
})

describe('[P23] what a vessel is to hold', () => {
  test('is every weighing that ends in it, over cups and other vessels, or more where more is in', () => {
    const bench = openTestBench(lotionHeader())
    const target = (...steps: readonly string[]) =>
      steps.reduce((sum, id) => sum + (bench.step(id).targets.at(-1) ?? 0), 0)
    expect(vesselTargetUg(bench.state, 'oil')).toBe(grams('90'))
    expect(vesselTargetUg(bench.state, 'slurry')).toBe(target('a-propanediol', 'a-gum'))
    const weighings = bench.state.plan.steps.filter(({ step }) => step.kind === 'weigh').map(({ id }) => id)
    expect(vesselTargetUg(bench.state, 'main')).toBe(target(...weighings))
    bench.intend({ do: 'add-unplanned', name: 'Oat', vessel: 'slurry', netUg: grams(60), reason: 'softer' })
    expect(vesselTargetUg(bench.state, 'slurry')).toBe(grams(60))
  })

  test('and where it ends is where its charges and combinations lead', () => {
    const { state } = openTestBench(lotionHeader())
    expect(['main', 'oil', 'slurry', 'cool-cup'].map((id) => endVessel(state, id))).toEqual(Array(4).fill('main'))
    expect(lastVessel(state)?.id).toBe('main')
    const first = openTestBench(lotionHeader({ mode: 'weigh-up-first' })).state
    expect(endVessel(first, 'cup:b-squalane')).toBe('main')
    expect(endVessel(first, 'none-such')).toBe('none-such')
  })
})

describe('[F39] what a batch took', () => {
  test('is told by lot; of a pre-mix what it was made of', () => {
    const bench = benchWith({ kind: 'clean' })
    const [water, squalane] = usedLots(bench.state)
    expect(squalane).toEqual({ lot: 'lot-sq-115', massUg: grams('15') })
    expect(water?.massUg).toBe(bench.step('a-water').netUg)
    const parts = [
      { lot: 'lot-neat', massUg: grams('0.2') },
      { lot: 'lot-thin', massUg: grams('1.8') },
    ]
    const { header } = bench.state
    const lots = header.lots.map((each) =>
      each.line === 'squalane' ? { ...each, lots: each.lots.map((lot) => ({ ...lot, madeFrom: parts })) } : each,
    )
    expect(usedLots({ ...bench.state, header: { ...header, lots } }).slice(1)).toEqual(parts)
  })
})
