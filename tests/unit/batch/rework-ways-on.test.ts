import { describe, expect, test } from 'vitest'
import { consequencesOf, remediesFor } from '../../../src/batch/deviation'
import { forewarn } from '../../../src/batch/forewarn'
import type { ReworkStep } from '../../../src/batch/intention'
import { nextStep, statusOf, targetOf } from '../../../src/batch/progress'
import { recordOf } from '../../../src/batch/record'
import { findingsOf } from '../../../src/batch/record-review'
import { problemOf } from '../../../src/batch/remedy-problem'
import { inSink, massIn } from '../../../src/trade/ledger'
import { addedOf } from '../../../src/trade/ledger-sums'
import { grams, type TestBench } from '../../support/batch'
import { formulas, headerFor } from '../../support/formulas'
import { closedBench, gum, lotionClosed, openRework, preservative, runOut, water } from '../../support/rework'

describe('an addition of a rework that is over', () => {
  const over = (steps: readonly ReworkStep[] = [gum, water], reading = '1.9') => {
    const bench = lotionClosed()
    const [first = '', second = ''] = openRework(bench, steps)
    bench.read('main', 21)
    bench.weigh(first, reading)
    return { bench, first, second }
  }

  test('[K14] is noticed at the reading, forewarned before it, and nothing goes on until a way is chosen', () => {
    const bench = lotionClosed()
    const [first = '', second = ''] = openRework(bench, [gum, water])
    const reading = { mode: 're-tare', readingUg: grams('1.9') } as const
    expect(forewarn(bench.state, { step: first, reading }, bench.nowMs)?.feasible).toBe(true)
    bench.weigh(first, '1.9')
    expect(bench.deviation()).toMatchObject({ step: first, line: 'sclerotium-gum', byUg: grams('0.4'), inCup: false })
    expect(statusOf(bench.state, first)).toBe('over')
    expect(nextStep(bench.state)?.id).toBe(first)
    expect(bench.gatesOn({ do: 'weigh', step: second, reading })).toEqual(['ORDER'])
    expect(bench.gatesOn({ do: 'weigh', step: first, reading })).toEqual(['DEVIATION_OPEN'])
  })

  test('[K14] what it does to the product is told of what is reworked, not of what was filled and kept', () => {
    const all = over([preservative], '0.6')
    const kept = lotionClosed()
    kept.read('main', 21)
    const [step = ''] = openRework(kept, [preservative], { keptUg: inSink(kept.state.ledger, 'filled') / 2 })
    kept.weigh(step, '0.6')
    const share = ({ state, deviation }: TestBench) =>
      consequencesOf(state, deviation().id)?.rows.find(({ line }) => line === 'phenoxyethanol-ehg')?.after ?? 0
    expect(share(all.bench)).toBeCloseTo((410 * 0.01 + 0.6) / 410.6, 5)
    expect(share(kept)).toBeCloseTo((205 * 0.01 + 0.6) / 205.6, 5)
  })

  test('[K14] water that is still to come gives way, the total stays, and struck out the water is asked for again', () => {
    const { bench, second } = over()
    const totalUg = bench.state.totalUg
    bench.settle('qs')
    expect(bench.state.totalUg).toBe(totalUg)
    expect(targetOf(bench.state, second)).toBe(grams('19.6'))
    const remedy = bench.events.findLast(({ kind }) => kind === 'remedy-chosen')
    bench.strike(remedy?.id ?? '')
    expect(targetOf(bench.state, second)).toBe(grams('20'))
    bench.settle('qs')
    runOut(bench)
    expect(massIn(bench.state.ledger, 'main')).toBe(grams('431.5'))
  })

  test('[K14] more of the rest is asked for where it may still go in', () => {
    const { bench } = over([{ ...gum, line: 'tocopherol', name: 'Tocopherol', massUg: grams('0.1') }, water], '0.2')
    const offers = remediesFor(bench.state, bench.deviation().id)
    expect(offers.find(({ remedy }) => remedy === 'discard')).toBeUndefined()
    expect(offers.find(({ remedy }) => remedy === 'accept')).toMatchObject({ feasible: true, endsUg: grams('430.2') })
    const locked = problemOf(bench.state).lines.filter((line) => line.locked)
    expect(locked.map(({ id }) => id)).toContain('squalane')
    expect(locked.map(({ id }) => id)).not.toContain('aqua')
  })

  test('[K14] accepted with a reason it is in the record under its rework, and a reviewer sees it', () => {
    const { bench } = over([gum])
    const deviation = bench.deviation().id
    const intention = { do: 'settle', deviation, remedy: 'accept', reason: ' ' } as const
    expect(bench.refusal(intention).code).toBe('REASON_MISSING')
    bench.settle('accept')
    expect(bench.state.totalUg).toBe(grams('501.9'))
    runOut(bench)
    const record = recordOf(bench.state)
    expect(record.reworks[0]?.materials).toMatchObject([{ actualUg: grams('1.9'), verdict: 'over', deviation: true }])
    expect(record.deviations).toMatchObject([{ name: 'Sclerotium gum', settled: { how: 'accept' } }])
    expect(findingsOf(record).map(({ kind }) => kind)).toContain('deviation')
  })

  test('[K14] left short with a reason, the total is less', () => {
    const { bench, first } = over([gum], '1.2')
    expect(statusOf(bench.state, first)).toBe('part')
    bench.intend({ do: 'leave-short', step: first, reason: 'the tub is empty' })
    expect(statusOf(bench.state, first)).toBe('done')
    expect(bench.state.totalUg).toBe(grams('501.2'))
    expect(problemOf(bench.state).totalUg).toBe(massIn(bench.state.ledger, 'main'))
  })

  test('[K14] skipped with a reason, what follows reckons without it', () => {
    const bench = lotionClosed()
    const [first = '', second = ''] = openRework(bench, [gum, preservative])
    bench.intend({ do: 'skip-step', step: first, reason: 'thick enough by now' })
    bench.read('main', 21)
    bench.weigh(second, '0.6')
    const inUg = massIn(bench.state.ledger, 'main')
    expect(problemOf(bench.state).totalUg).toBe(inUg - grams('0.2'))
    expect(remediesFor(bench.state, bench.deviation().id).find(({ remedy }) => remedy === 'accept')?.endsUg).toBe(inUg)
    expect(findingsOf(recordOf(bench.state)).map(({ kind }) => kind)).toContain('skipped')
  })
})

describe('in a batch that is weighed up first', () => {
  const weighedUp = () => {
    const bench = closedBench(headerFor(formulas.lotion, { mode: 'weigh-up-first' }), 'ph-next-day')
    return { bench, ids: openRework(bench, [gum, { ...preservative }]) }
  }

  test('[K14] what a rework adds goes into a cup of its own, and what is too much comes out of it again', () => {
    const { bench, ids } = weighedUp()
    const [first = '', second = '', tipIn = ''] = ids
    const cups = new Set([first, second].map((id) => bench.state.plan.byId.get(id)?.step.vessel))
    const names = [...cups].map((id) => bench.state.plan.vessels.get(id ?? '')?.name)
    const before = [...bench.state.header.vessels].map(({ name }) => name)
    expect(names.some((name) => before.includes(name ?? ''))).toBe(false)
    expect(new Set([...bench.state.plan.vessels.values()].map(({ name }) => name)).size).toBe(
      bench.state.plan.vessels.size,
    )
    bench.weigh(first, '1.9')
    expect(bench.deviation().inCup).toBe(true)
    bench.intend({ do: 'take-out', step: first, massUg: grams('0.4'), reason: 'a scoop too many' })
    expect(statusOf(bench.state, first)).toBe('done')
    const heldUg = massIn(bench.state.ledger, 'main')
    bench.weigh(second, '0.4')
    bench.charge(tipIn)
    expect(massIn(bench.state.ledger, 'main')).toBe(heldUg + grams('1.5'))
    runOut(bench)
    expect(massIn(bench.state.ledger, 'main')).toBe(heldUg + grams('1.9'))
  })

  test('[K14] a cup may be thrown away and weighed again', () => {
    const { bench, ids } = weighedUp()
    const [first = ''] = ids
    bench.weigh(first, '1.9')
    bench.intend({ do: 'discard-cup', vessel: `cup:${first}`, reason: 'a fly in it' })
    expect(statusOf(bench.state, first)).toBe('open')
    runOut(bench)
    expect(addedOf(bench.state.ledger, 'sclerotium-gum')).toBe(grams('2') + grams('1.9') + grams('1.5'))
  })
})
