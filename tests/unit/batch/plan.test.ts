import { describe, expect, test } from 'vitest'
import { planBatch } from '../../../src/batch/plan-batch'
import { openSteps, statusOf } from '../../../src/batch/progress'
import type { Step } from '../../../src/batch/step'
import { weighingOf } from '../../../src/batch/weighing-of'
import { compositionAsMade } from '../../../src/trade/composition'
import { grams, openTestBench } from '../../support/batch'
import {
  formulas,
  headerFor,
  lotionHeader,
  newest,
  planOf,
  withLines,
  withLots,
  withSteps,
} from '../../support/formulas'
import { runUpTo } from '../../support/run'

const everyPlan = Object.entries(formulas).flatMap(([name, formula]) =>
  ['250', String(newest(formula).usualSizeUg / 1e6), '2000'].flatMap((size) =>
    (['as-you-go', 'weigh-up-first'] as const).map((mode) => ({ name, size, mode, formula })),
  ),
)

describe('the plan', () => {
  test.each(everyPlan)('[P4] $name plans at $size g, weighing $mode', ({ formula, size, mode }) => {
    const plan = planOf(headerFor(formula, { size, mode }))
    const wantsMass = plan.steps.filter(({ step }) => step.kind === 'weigh' || step.kind === 'adjust')
    expect(wantsMass.every(({ targetUg = 0 }) => targetUg > 0)).toBe(true)
  })

  test.each(everyPlan)('[P1] what $name weighs at $size g, weighing $mode, and holds back makes the size', (each) => {
    const plan = planOf(headerFor(each.formula, { size: each.size, mode: each.mode }))
    const weighed = plan.steps.reduce((sum, { targetUg = 0 }) => sum + targetUg, 0)
    expect(weighed + plan.heldBackUg).toBe(grams(each.size))
    expect(plan.totalUg).toBe(grams(each.size))
  })

  test('[P2] a step waits for the earlier steps of its own vessel and for those it names, and for no others', () => {
    const plan = planOf(lotionHeader())
    expect(plan.byId.get('a-oat')?.waitsFor).toEqual(['a-slurry-in', 'a-hydrate'])
    expect(plan.byId.get('b-melt')?.waitsFor.every((id) => id.startsWith('b-'))).toBe(true)
    expect(plan.byId.get('b-into-a')?.waitsFor).toEqual(expect.arrayContaining(['a-heat', 'b-melt']))
    expect(plan.byId.get('c-panthenol')?.waitsFor).toEqual([])
  })

  test('[P2] lines of one phase in one vessel go in any order, unless one is of fixed order', () => {
    const oil = ['b-triglyceride', 'b-squalane', 'b-shea', 'b-emulsifier', 'b-cetearyl']
    const plan = planOf(lotionHeader())
    for (const step of oil) expect(plan.byId.get(step)?.waitsFor).toEqual([])
    expect(plan.byId.get('a-gum')?.waitsFor).toEqual(['a-propanediol'])
    const fixed = withLines(lotionHeader(), (line) =>
      line.id === 'shea-butter' ? { ...line, fixedOrder: true } : line,
    )
    expect(planOf(fixed).byId.get('b-shea')?.waitsFor).toEqual(['b-triglyceride', 'b-squalane'])
    expect(planOf(fixed).byId.get('b-emulsifier')?.waitsFor).toEqual([])
  })

  test('[P2] a line of a later phase waits for the earlier phase in its vessel', () => {
    const later = withSteps(lotionHeader(), (step) => (step.id === 'b-shea' ? { ...step, phase: 'C' } : step))
    expect(planOf(later).byId.get('b-shea')?.waitsFor).toEqual(['b-triglyceride', 'b-squalane'])
  })

  test('[P2] B melts while A hydrates: several steps are open at once', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'a-hydrate')
    bench.timer('a-hydrate', 20)
    const open = openSteps(bench.state).map((planned) => planned.id)
    expect(open).toEqual(expect.arrayContaining(['a-hydrate', 'b-triglyceride', 'b-cetearyl', 'c-panthenol']))
    expect(statusOf(bench.state, 'a-oat')).toBe('waiting')
  })

  test('[P3] weighing up first gives every line but the first of a vessel a labelled cup, and tips it in where it was', () => {
    const plan = planOf(lotionHeader({ mode: 'weigh-up-first' }))
    const weighings = plan.steps.filter(({ step }) => step.kind === 'weigh')
    const direct = weighings.filter(({ step }) => !step.vessel.startsWith('cup:')).map(({ id }) => id)
    expect(direct).toEqual(['a-water', 'a-propanediol', 'b-triglyceride', 'c-panthenol'])
    expect(plan.vessels.get('cup:b-shea')).toMatchObject({ kind: 'cup', holds: 'Shea butter' })
    const tipIns = plan.steps.filter((planned) => planned.weighUp)
    expect(tipIns).toHaveLength(weighings.length - direct.length)
    for (const { step } of tipIns) expect(step).toMatchObject({ kind: 'charge', cup: `cup:${step.id.slice(0, -3)}` })
    expect(weighings.every(({ index }) => index < weighings.length)).toBe(true)
    const process = plan.steps.slice(weighings.length).map(({ id }) => id.replace(':in', ''))
    const procedure = lotionHeader().revision.procedure.map((step) => step.id)
    expect(process).toEqual(procedure.filter((id) => !direct.includes(id)))
  })

  test('[P3] what waited for a weighing waits for its cup to be tipped in', () => {
    const plan = planOf(lotionHeader({ mode: 'weigh-up-first' }))
    expect(plan.byId.get('a-slurry-in')?.waitsFor).toEqual(expect.arrayContaining(['a-propanediol', 'a-gum:in']))
    expect(plan.byId.get('b-shea')?.waitsFor).toEqual([])
    expect(plan.byId.get('b-shea:in')?.waitsFor).toEqual(['b-shea'])
    expect(plan.byId.get('a-oat:in')?.waitsFor).toEqual(expect.arrayContaining(['a-oat', 'a-hydrate']))
  })

  test.each(Object.entries(formulas))(
    '[P3] %s ends at the same composition, weighed up first or as one goes',
    (_name, formula) => {
      const made = (['as-you-go', 'weigh-up-first'] as const).map((mode) => {
        const bench = openTestBench(headerFor(formula, { mode }))
        runUpTo(bench, 'sample')
        return new Map([...compositionAsMade(bench.state.ledger)].sort())
      })
      expect(made[1]).toEqual(made[0])
      expect(made[0]?.size).toBeGreaterThan(5)
    },
  )

  test('[P5] a lot of another assay changes its target, and q.s. takes the difference', () => {
    const weak = withLots(lotionHeader(), 'panthenol-75', (lots) => lots.map((lot) => ({ ...lot, assay: 0.7 })))
    const plan = planOf(weak)
    expect(plan.lines.get('panthenol-75')?.targetUg).toBe(grams('7.125'))
    expect(plan.byId.get('a-water')?.targetUg).toBe(grams('348.85') - grams('0.475'))
    expect(plan.totalUg).toBe(grams(500))
  })

  test('[P5] the remainder is worked out anew for the lot in use', () => {
    const header = withLots(lotionHeader(), 'panthenol-75', ([lot]) => {
      if (!lot) throw new Error('no lot')
      return [lot, { ...lot, id: 'lot-weak', code: 'WEAK', assay: 0.6 }]
    })
    const bench = openTestBench(header)
    bench.weigh('c-panthenol', '3.65')
    expect(weighingOf(bench.state, 'c-panthenol')).toMatchObject({ targetUg: grams('6.65'), leftUg: grams(3) })
    expect(weighingOf(bench.state, 'c-panthenol', 'lot-weak')?.leftUg).toBe(grams('3.75'))
    bench.weigh('c-panthenol', '3.75', { lot: 'lot-weak' })
    expect(statusOf(bench.state, 'c-panthenol')).toBe('done')
    expect(bench.step('c-panthenol')).toMatchObject({ countedUg: grams('6.65'), netUg: grams('7.4') })
    expect(bench.state.usedByLot.get('lot-weak')).toBe(grams('3.75'))
  })

  test('[P1] a procedure that names what is not there is refused by name', () => {
    const broken = (change: (step: Step) => Step) => {
      const plan = planBatch(withSteps(lotionHeader(), change))
      return plan.ok ? null : plan.refusal
    }
    expect(broken((step) => (step.id === 'b-shea' ? { ...step, vessel: 'bucket' } : step))).toEqual({
      code: 'UNKNOWN_VESSEL',
      step: 'b-shea',
      vessel: 'bucket',
    })
    expect(
      broken((step) => (step.kind === 'weigh' && step.id === 'b-shea' ? { ...step, line: 'lard' } : step)),
    ).toEqual({
      code: 'UNKNOWN_LINE',
      step: 'b-shea',
      line: 'lard',
    })
    expect(broken((step) => (step.kind === 'measure' ? { ...step, check: 'taste' } : step))).toMatchObject({
      code: 'UNKNOWN_CHECK',
      check: 'taste',
    })
    expect(planBatch({ ...lotionHeader(), balances: [] })).toEqual({ ok: false, refusal: { code: 'NO_BALANCE' } })
    expect(planBatch({ ...lotionHeader(), materials: [] })).toMatchObject({ refusal: { code: 'UNKNOWN_MATERIAL' } })
    expect(planBatch({ ...lotionHeader(), sizeUg: 0 })).toMatchObject({ refusal: { code: 'SIZE_BAD' } })
    expect(planBatch({ ...lotionHeader(), sizeUg: grams('0.1') })).toMatchObject({
      refusal: { code: 'TARGET_ROUNDS_TO_ZERO' },
    })
  })
})
