import { describe, expect, test } from 'vitest'
import { consequencesOf, type RemedyOffer, remediesFor } from '../../../src/batch/deviation'
import { isDone, statusOf, totalsOf } from '../../../src/batch/progress'
import { compositionAsMade } from '../../../src/trade/composition'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const offersOf = (bench: TestBench): readonly RemedyOffer[] => remediesFor(bench.state, bench.deviation().id)

/** The slurry went in without its gum, and hydration has passed. */
function gumForgotten(): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'a-gum')
  bench.pass('a-slurry-in', 'ORDER')
  bench.charge('a-slurry-in')
  bench.timer('a-hydrate', 20)
  bench.wait(21)
  bench.finish('a-hydrate')
  return bench
}

const gum = 'sclerotium-gum'

describe('a forgotten line', () => {
  test('[R28] is noticed when the step passes after which it cannot go in', () => {
    const bench = gumForgotten()
    expect(bench.deviation()).toMatchObject({
      cause: 'forgotten',
      step: 'a-gum',
      line: gum,
      direction: 'under',
      byUg: grams(2),
    })
    expect(statusOf(bench.state, 'a-gum')).toBe('over')
    const row = consequencesOf(bench.state, bench.deviation().id)?.rows[0]
    expect(row).toMatchObject({ line: gum, after: 0, low: 0.0038, breaks: true })
  })

  test('[R28] no dilution mends it: what would need more of it says so, the vessel started again stands first', () => {
    const offers = offersOf(gumForgotten())
    expect(offers[0]).toMatchObject({ remedy: 'discard', breaks: 0, waste: { vessel: 'main' } })
    expect(offers.find(({ remedy }) => remedy === 'extra')).toMatchObject({ feasible: false })
    expect(offers.find(({ remedy }) => remedy === 'scale')).toMatchObject({ why: { code: 'LINE_LOCKED', id: gum } })
  })

  test('[R28] accepted, the batch is that much less and goes on without it', () => {
    const bench = gumForgotten()
    bench.settle('accept')
    expect(bench.state.totalUg).toBe(grams(498))
    expect(isDone(bench.state, 'a-gum')).toBe(true)
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(498))
    expect(compositionAsMade(bench.state.ledger).get(gum)).toBeUndefined()
  })

  test('[R28] striking out the step that passed leaves nothing to settle', () => {
    const bench = gumForgotten()
    bench.strike(bench.deviation().entry)
    expect(bench.state.deviations.values().next().value?.settled?.how).toBe('struck out')
    expect(statusOf(bench.state, 'a-gum')).toBe('open')
  })

  test('[R29] the vessel started again goes to waste with its price, and everything in it is to do again', () => {
    const bench = gumForgotten()
    const { waste } = offersOf(bench).find(({ remedy }) => remedy === 'discard') ?? {}
    expect(waste?.massUg).toBe(bench.massIn('main'))
    expect(waste?.cost).toBeGreaterThan(0)
    bench.settle('discard')
    expect(bench.massIn('main')).toBe(0)
    expect(['a-water', 'a-propanediol', 'a-gum'].map((step) => isDone(bench.state, step))).toEqual([
      false,
      false,
      false,
    ])
    expect([...bench.state.deviations.values()].every((each) => each.settled)).toBe(true)
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams(500))
    expect(compositionAsMade(bench.state.ledger).get(gum)).toBeCloseTo(0.004, 6)
  })

  test('[R29] once something was combined in it, a vessel is not started again', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-homogenise')
    bench.intend({
      do: 'add-unplanned',
      name: 'Citric acid',
      vessel: 'main',
      netUg: grams(20),
      reason: 'wrong tub',
      most: 0.005,
    })
    expect(offersOf(bench).map(({ remedy }) => remedy)).not.toContain('discard')
  })
})
