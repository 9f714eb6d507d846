import { describe, expect, test } from 'vitest'
import { consequencesOf, type RemedyOffer, remediesFor } from '../../../src/batch/deviation'
import type { RemedyKind } from '../../../src/batch/kinds'
import { lineTargetUg } from '../../../src/batch/line-targets'
import { isDone, statusOf, targetOf, totalsOf } from '../../../src/batch/progress'
import { weighingOf } from '../../../src/batch/weighing-of'
import { compositionAsMade } from '../../../src/trade/composition'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader, withVessels } from '../../support/formulas'
import { runUpTo, weighOnTarget } from '../../support/run'

const offerOf = (bench: TestBench, remedy: RemedyKind): RemedyOffer => {
  const offer = remediesFor(bench.state, bench.deviation().id).find((each) => each.remedy === remedy)
  if (!offer) throw new Error(`no ${remedy}`)
  return offer
}

/** 1.12 g too much emulsifier, nothing locked yet: the picture's own case. */
function emulsifierOver(before: readonly string[] = []): TestBench {
  const bench = openTestBench(lotionHeader())
  for (const step of before) weighOnTarget(bench, step)
  bench.weigh('b-emulsifier', '18.62')
  return bench
}

/** Every target with what is held back makes the planned total. */
const plannedUg = (bench: TestBench): number =>
  [...bench.state.plan.lines.keys()].reduce((sum, line) => sum + lineTargetUg(bench.state, line), 0)

describe('a deviation in a vessel', () => {
  test('[R1] it is told at once with what it does to the product', () => {
    const bench = emulsifierOver()
    expect(bench.deviation()).toMatchObject({ direction: 'over', byUg: grams('1.12'), inCup: false })
    const consequences = consequencesOf(bench.state, bench.deviation().id)
    expect(consequences?.finishedUg).toBe(grams('501.12'))
    expect(consequences?.rows[0]).toMatchObject({
      line: 'glyceryl-stearate-peg-100',
      low: 0.034,
      high: 0.036,
      breaks: true,
    })
    expect(consequences?.rows[0]?.after).toBeCloseTo(18.62 / 501.12, 12)
  })

  test('[R1] ways on are offered in order of merit, those that keep every limit first', () => {
    const bench = emulsifierOver()
    const offers = remediesFor(bench.state, bench.deviation().id)
    expect(offers.map((offer) => offer.remedy)).toEqual(['scale', 'extra', 'cost', 'discard', 'qs', 'accept'])
    expect(offers.map((offer) => offer.breaks)).toEqual([0, 0, 0, 0, 1, 1])
    expect(offers.every((offer) => offer.feasible)).toBe(true)
    expect(offers[0]?.rows.some((row) => row.breaks)).toBe(false)
  })

  test('[R2] scaling keeps the exact ratio: new targets on the balance, and a total to the microgram', () => {
    const bench = emulsifierOver(['a-water', 'b-triglyceride'])
    const offer = offerOf(bench, 'scale')
    expect(offer.totalUg).toBe(grams(532))
    bench.settle('scale')
    expect(bench.state).toMatchObject({ totalUg: grams(532), totalWas: [grams(500)] })
    expect(targetOf(bench.state, 'b-shea')).toBe(grams('10.64'))
    expect(weighingOf(bench.state, 'b-shea')?.wasUg).toEqual([grams(10)])
    expect(targetOf(bench.state, 'a-phytate')).toBe(grams('1.064'))
    expect(plannedUg(bench)).toBe(grams(532))
    expect(isDone(bench.state, 'b-emulsifier')).toBe(true)
    // What was done already asks for the rest of its new target.
    expect(statusOf(bench.state, 'b-triglyceride')).toBe('part')
    expect(weighingOf(bench.state, 'b-triglyceride')?.leftUg).toBe(grams('2.24'))
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(532))
    const made = compositionAsMade(bench.state.ledger)
    expect(made.get('glyceryl-stearate-peg-100')).toBeCloseTo(0.035, 6)
    expect(made.get('shea-butter')).toBeCloseTo(0.02, 5)
  })

  test('[R3] q.s. gives way: the total stays, the held-back water is less', () => {
    const bench = emulsifierOver(['a-water'])
    bench.settle('qs')
    expect(bench.state).toMatchObject({ totalUg: grams(500), totalWas: [], heldBackUg: grams('16.38') })
    expect(targetOf(bench.state, 'b-shea')).toBe(grams(10))
    expect(plannedUg(bench)).toBe(grams(500))
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(500))
  })

  test('[R3] where more is over than is held back, an open portion of q.s. gives way too', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-triglyceride', '60')
    bench.settle('qs')
    expect(bench.state.heldBackUg).toBe(0)
    expect(targetOf(bench.state, 'a-water')).toBe(grams('341.35'))
    expect(plannedUg(bench)).toBe(grams(500))
  })

  test('[R3] where the water is in already, q.s. cannot give way, and says why', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('a-water', '348.85')
    bench.weigh('b-triglyceride', '60')
    expect(offerOf(bench, 'qs')).toMatchObject({
      feasible: false,
      why: { code: 'QS_ALREADY_PAST', id: 'aqua', pastUg: grams('7.5') },
    })
    const { id } = bench.deviation()
    const settle = { do: 'settle', deviation: id, remedy: 'qs', reason: 'x' } as const
    expect(bench.refusal(settle).code).toBe('REMEDY_IMPOSSIBLE')
  })

  test('[R4] accepting makes what is in the plan: nothing else changes', () => {
    const bench = emulsifierOver()
    bench.settle('accept')
    expect(bench.state).toMatchObject({ totalUg: grams('501.12'), totalWas: [grams(500)], heldBackUg: grams('17.5') })
    expect(targetOf(bench.state, 'b-shea')).toBe(grams(10))
    expect(plannedUg(bench)).toBe(grams('501.12'))
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams('501.12'))
  })

  test('[R4] a way on is chosen once, with a reason', () => {
    const bench = emulsifierOver()
    const { id } = bench.deviation()
    const settle = { do: 'settle', deviation: id, remedy: 'accept', reason: '' } as const
    expect(bench.refusal(settle).code).toBe('REASON_MISSING')
    expect(bench.refusal({ ...settle, deviation: 'none' }).code).toBe('NO_SUCH_DEVIATION')
    expect(bench.refusal({ ...settle, remedy: 'smaller', reason: 'x' }).code).toBe('REMEDY_IMPOSSIBLE')
    bench.settle('accept')
    expect(bench.refusal({ ...settle, reason: 'x' }).code).toBe('SETTLED_ALREADY')
  })

  test('[R5] a second deviation after a first remedy reckons with the first', () => {
    const bench = emulsifierOver()
    bench.settle('scale')
    bench.weigh('b-shea', '11.172')
    expect(bench.deviation()).toMatchObject({ byUg: grams('0.532') })
    const scaled = offerOf(bench, 'scale')
    expect(scaled.totalUg).toBe(grams('558.6'))
    bench.settle('scale')
    expect(bench.state.totalWas).toEqual([grams(500), grams(532)])
    expect(targetOf(bench.state, 'b-emulsifier')).toBe(grams('19.551'))
    expect(statusOf(bench.state, 'b-emulsifier')).toBe('part')
    expect(plannedUg(bench)).toBe(grams('558.6'))
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams('558.6'))
  })

  test('[R5] scaling after an accepted deviation keeps the ratio that was accepted', () => {
    const bench = emulsifierOver()
    bench.settle('accept')
    bench.weigh('b-shea', '11')
    bench.settle('scale')
    expect(bench.state.totalUg).toBe(Math.round(grams('501.12') * 1.1))
    expect(targetOf(bench.state, 'b-emulsifier')).toBe(grams('20.482'))
    expect(statusOf(bench.state, 'b-emulsifier')).toBe('part')
    expect(plannedUg(bench)).toBe(bench.state.totalUg)
  })

  test('[R5] a weighing that was struck out leaves nothing behind in what is scaled later', () => {
    const bench = openTestBench(lotionHeader())
    const mistyped = bench.weigh('b-shea', '99.8')
    bench.strike(mistyped)
    bench.weigh('b-shea', '10.036')
    bench.weigh('b-emulsifier', '18.62')
    bench.settle('scale')
    expect(targetOf(bench.state, 'b-shea')).toBe(grams('10.64'))
  })

  test('[R6] a remedy after a charge goes on in the vessel, and a locked line forbids what would need more of it', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'a-hydrate')
    bench.weigh('b-emulsifier', '18.62')
    bench.settle('scale')
    expect(statusOf(bench.state, 'a-propanediol')).toBe('part')
    bench.weigh('a-propanediol', '1.28')
    bench.weigh('a-gum', '0.128')
    expect(bench.massIn('slurry')).toBe(0)
    const locked = openTestBench(lotionHeader())
    runUpTo(locked, 'b-triglyceride')
    locked.weigh('b-emulsifier', '18.62')
    expect(offerOf(locked, 'scale')).toMatchObject({ feasible: false, why: { code: 'LINE_LOCKED' } })
    const offers = remediesFor(locked.state, locked.deviation().id)
    expect(offers.filter(({ feasible }) => !feasible).map(({ remedy }) => remedy)).toContain('scale')
    expect(offers[0]).toMatchObject({ remedy: 'extra', totalUg: grams('517.23'), breaks: 0 })
  })

  test('[R6] scaling past the room of the vessel is not possible', () => {
    const bench = openTestBench(withVessels(lotionHeader(), ({ stirsUg: _none, ...vessel }) => vessel))
    bench.weigh('b-shea', '17')
    expect(offerOf(bench, 'scale')).toMatchObject({
      feasible: false,
      why: { code: 'VESSEL_TOO_SMALL', neededUg: grams(850), capacityUg: grams(800) },
    })
  })

  test('[R42] nor past what the stirrer moves in it, and no smaller batch than it reaches is offered', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-shea', '17')
    expect(offerOf(bench, 'scale')).toMatchObject({
      feasible: false,
      why: { code: 'STIRRER_TOO_SMALL', neededUg: grams(850), mostUg: grams(720) },
    })
    const { id } = bench.deviation()
    const figures = { totalUg: grams(850), heldBackUg: grams('29.75'), targets: [] }
    const settle = { do: 'settle', deviation: id, remedy: 'scale', reason: 'x', figures } as const
    expect(bench.refusal(settle).code).toBe('REMEDY_IMPOSSIBLE')
  })

  test('[R42] a stirrer that was kept although the batch is too small for it asks for nothing', () => {
    const kept = withVessels(lotionHeader(), (vessel) =>
      vessel.stirsUg ? { ...vessel, stirsUg: { min: grams(600), max: grams(720) } } : vessel,
    )
    const bench = openTestBench(kept)
    bench.weigh('b-emulsifier', '18.62')
    expect(offerOf(bench, 'scale')).toMatchObject({ feasible: true, endsUg: grams(532) })
  })

  test('[R42] a beaker on the way that the new targets would overfill is named', () => {
    const small = withVessels(lotionHeader(), (vessel) =>
      vessel.id === 'oil' ? { ...vessel, capacityUg: grams(92) } : vessel,
    )
    const bench = openTestBench(small)
    bench.weigh('b-emulsifier', '18.62')
    expect(offerOf(bench, 'scale')).toMatchObject({
      feasible: false,
      why: { code: 'SIDE_VESSEL_TOO_SMALL', id: 'oil', neededUg: grams('95.76'), capacityUg: grams(92) },
    })
  })

  test('[R7] a line left short is accepted with a reason, and the total is that much less', () => {
    const bench = openTestBench(lotionHeader())
    const short = { do: 'leave-short', step: 'b-squalane', reason: 'bottle empty' } as const
    expect(bench.refusal(short).code).toBe('NOTHING_WEIGHED')
    bench.weigh('b-squalane', '14')
    expect(bench.refusal({ ...short, reason: '' }).code).toBe('REASON_MISSING')
    bench.intend(short)
    expect(isDone(bench.state, 'b-squalane')).toBe(true)
    expect(bench.state.totalUg).toBe(grams(499))
    expect(plannedUg(bench)).toBe(grams(499))
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(499))
  })

  test('[R7] too much water is a deviation like any other, and the held-back water can take it', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('a-water', '358.85')
    expect(offerOf(bench, 'qs').feasible).toBe(true)
    bench.settle('qs')
    expect(bench.state).toMatchObject({ totalUg: grams(500), heldBackUg: grams('7.5') })
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(500))
  })
})
