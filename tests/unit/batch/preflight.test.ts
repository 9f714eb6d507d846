import { describe, expect, test } from 'vitest'
import type { Balance } from '../../../src/batch/catalogue'
import { finestFor, loadsOf } from '../../../src/batch/loads'
import type { PlannedLine } from '../../../src/batch/plan'
import { mustBeSettled, preflightOf } from '../../../src/batch/preflight'
import { grams } from '../../support/batch'
import { lotionHeader, planOf, withSteps, withVessels } from '../../support/formulas'

const header = lotionHeader()
const plan = planOf(header)

/** Repeats to 1 mg, so that at a tolerance of 1 % it weighs from 200 mg on, and well from 600 mg on. */
const fine: Balance = {
  id: 'fine',
  name: 'Fine',
  stepUg: grams('0.001'),
  repeatabilityUg: grams('0.001'),
  capacityUg: grams(200),
}
const coarse: Balance = { ...fine, id: 'coarse', stepUg: grams('0.01'), repeatabilityUg: grams('0.01') }

/** What is said of one line, everything else in order. */
const findingsOn = (over: Partial<PlannedLine>, balances = [fine, coarse]) => {
  const [id, planned] = [...plan.lines].find(([, { line }]) => line.id === 'shea-butter') ?? []
  if (id === undefined || planned === undefined) throw new Error('no such line')
  const line = { ...planned.line, tolerance: { relative: 0.01 } }
  const lines = new Map([[id, { ...planned, line, balance: fine, lots: [], ...over }]])
  return preflightOf({ ...header, balances }, { ...plan, lines }, new Map(), '2026-11-24').filter(
    ({ about, code }) => about === 'shea-butter' && code !== 'NO_LOT',
  )
}

describe('a line on its balance', () => {
  test('[P21] is called out below what the balance weighs, and said to be only fair up to three times that', () => {
    const codesAt = (mass: string) => findingsOn({ targetUg: grams(mass) }).map(({ code }) => code)
    expect(['0.199', '0.200', '0.599', '0.600'].map(codesAt)).toEqual([
      ['TOO_SMALL'],
      ['FAIRLY_SMALL'],
      ['FAIRLY_SMALL'],
      [],
    ])
  })

  test('[P21] too much for it is called out past its capacity', () => {
    expect(findingsOn({ targetUg: grams(200) })).toEqual([])
    expect(findingsOn({ targetUg: grams('200.001') })).toMatchObject([
      { code: 'OVER_BALANCE', targetUg: grams('200.001'), balance: { id: 'fine' } },
    ])
  })

  test('[P21] is told the size from which it would do, and the coarsest other balance that does', () => {
    const small = { balance: coarse, targetUg: grams('1.2'), fraction: 0.004 }
    expect(findingsOn(small)).toMatchObject([
      { code: 'TOO_SMALL', goodFromUg: grams(2), sizeUg: grams(500), finer: { balance: { id: 'fine' } } },
    ])
    const between = { ...fine, id: 'between', repeatabilityUg: grams('0.004') }
    expect(findingsOn(small, [fine, coarse, between])).toMatchObject([{ finer: { balance: { id: 'between' } } }])
    const tiny = { ...fine, capacityUg: grams(1) }
    expect(findingsOn(small, [tiny, coarse])).toMatchObject([{ finer: null }])
  })

  test('[P21] what takes what is left, or goes in until a reading is right, has no band to miss', () => {
    const [planned] = [...plan.lines.values()].filter(({ line }) => line.amount.kind === 'qs')
    if (planned === undefined) throw new Error('no q.s.')
    expect(findingsOn({ targetUg: 1, line: { ...planned.line, id: 'shea-butter' } })).toEqual([])
    expect(findingsOn({ targetUg: 0 })).toEqual([])
  })
})

describe('a vessel before the start', () => {
  const saidOf = (vessel: string, of = header) =>
    preflightOf(of, planOf(of), new Map(), '2026-11-24').filter(
      ({ about, code }) => about === vessel && (code === 'VESSEL_SMALL' || code === 'STIRRER_RANGE'),
    )
  const peakUg = loadsOf(plan).inVessel.get('main') ?? 0
  const room = header.revision.vessels.find(({ id }) => id === 'main')?.roomFactor ?? 0
  const mainWith = (over: object) =>
    withVessels(header, (vessel) => (vessel.id === 'main' ? { ...vessel, ...over } : vessel))

  test('[P23] holds the most that is ever in it, with the room that the formula asks for', () => {
    expect(peakUg).toBe(grams(500))
    const neededUg = peakUg * room
    expect(saidOf('main', mainWith({ capacityUg: neededUg }))).toEqual([])
    expect(saidOf('main', mainWith({ capacityUg: neededUg - 1 }))).toEqual([
      { code: 'VESSEL_SMALL', about: 'main', peakUg, neededUg, capacityUg: neededUg - 1 },
    ])
  })

  test('[P23] what is stirred in it stands between the least and the most that its stirrer moves', () => {
    const stirring = (min: number, max: number) => saidOf('main', mainWith({ stirsUg: { min, max } }))
    expect(stirring(peakUg, peakUg)).toEqual([])
    expect(stirring(peakUg + 1, peakUg + 2)).toMatchObject([{ code: 'STIRRER_RANGE', peakUg }])
    expect(stirring(0, peakUg - 1)).toMatchObject([{ code: 'STIRRER_RANGE', peakUg }])
    const unstirred = withSteps(mainWith({ stirsUg: { min: 0, max: 1 } }), (step) =>
      step.kind === 'mix' || step.kind === 'hydrate' ? [] : step,
    )
    expect(preflightOf(unstirred, plan, new Map(), '2026-11-24').map(({ code }) => code)).not.toContain('STIRRER_RANGE')
  })
})

describe('what is found before the start', () => {
  test('[P26] is to be settled, but for what is only said', () => {
    const about = 'x'
    expect(mustBeSettled({ code: 'NO_LOT', about })).toBe(false)
    expect(mustBeSettled({ code: 'FAIRLY_SMALL', about, targetUg: 1 })).toBe(false)
    expect(mustBeSettled({ code: 'NOTHING_HELD_BACK', about })).toBe(false)
    expect(mustBeSettled({ code: 'NO_QS', about })).toBe(false)
    expect(mustBeSettled({ code: 'LOT_SHORT', about, neededUg: 2, leftUg: 1 })).toBe(true)
  })

  test('[P26] a formula without q.s., and one that holds nothing of it back, are said', () => {
    const codes = (of: typeof plan) => preflightOf(header, of, new Map(), '2026-11-24').map(({ code }) => code)
    expect(codes(plan)).not.toContain('NOTHING_HELD_BACK')
    expect(codes({ ...plan, heldBackUg: 0 })).toContain('NOTHING_HELD_BACK')
    const without = new Map([...plan.lines].filter(([, { line }]) => line.amount.kind !== 'qs'))
    expect(codes({ ...plan, lines: without })).toContain('NO_QS')
  })
})

describe('the balance for a load', () => {
  const large = { ...coarse, id: 'large', capacityUg: grams(2000) }

  test('[P22] is the finest that carries it, else the one that carries most', () => {
    expect(finestFor(grams(200), [large, coarse, fine])?.id).toBe('fine')
    expect(finestFor(grams('200.001'), [large, coarse, fine])?.id).toBe('large')
    expect(finestFor(grams(5000), [fine, large, coarse])?.id).toBe('large')
    expect(finestFor(grams(1), [])).toBeUndefined()
  })

  test('[P22] of two that are as fine it is the smaller', () => {
    expect(finestFor(grams(100), [large, coarse])?.id).toBe('coarse')
  })

  test('[P22] counts the vessel with what is already in it', () => {
    const { onBalance } = loadsOf(plan)
    const tareUg = plan.vessels.get('oil')?.tareUg ?? 0
    expect(tareUg).toBeGreaterThan(0)
    const inOil = plan.steps.filter(({ step }) => step.kind === 'weigh' && step.vessel === 'oil')
    const last = inOil.at(-1)?.step
    const all = inOil.reduce((sum, { targetUg }) => sum + (targetUg ?? 0), 0)
    expect(last?.kind === 'weigh' && onBalance.get(last.line)).toBe(tareUg + all)
  })
})
