// Long because one story of a batch, told step by step, proves the ways on together.
import { describe, expect, test } from 'vitest'
import { needsSolver, type RemedyOffer, remediesFor, remediesWithin } from '../../../src/batch/deviation'
import { forewarn } from '../../../src/batch/forewarn'
import type { BatchHeader } from '../../../src/batch/header'
import type { RemedyKind } from '../../../src/batch/kinds'
import { statusOf, targetOf, totalsOf } from '../../../src/batch/progress'
import { compositionAsMade } from '../../../src/trade/composition'
import { fingerprint, grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const offersOf = (bench: TestBench, onHand: ReadonlyMap<string, number> | null = null): readonly RemedyOffer[] =>
  remediesFor(bench.state, bench.deviation().id, onHand)

const offerOf = (bench: TestBench, remedy: RemedyKind, onHand: ReadonlyMap<string, number> | null = null) => {
  const offer = offersOf(bench, onHand).find((each) => each.remedy === remedy)
  if (!offer) throw new Error(`no ${remedy}`)
  return offer
}

/** 1.12 g too much emulsifier once A stands hot: the gum, the glycol and the oat can take no more. */
function emulsifierOver(): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'b-emulsifier')
  bench.weigh('b-emulsifier', '18.62')
  return bench
}

const gum = 'sclerotium-gum'

describe('make a little more', () => {
  test('[R26] is the least batch, on a total that the balance shows, that brings every line back into its limits', () => {
    const bench = emulsifierOver()
    const offer = offerOf(bench, 'extra')
    expect(offersOf(bench)[0]).toEqual(offer)
    expect(offer).toMatchObject({ feasible: true, totalUg: grams('517.23'), endsUg: grams('517.23'), breaks: 0 })
    bench.settle('extra')
    runUpTo(bench, 'sample')
    expect(totalsOf(bench.state).inUg).toBe(grams('517.23'))
    const made = compositionAsMade(bench.state.ledger)
    expect(made.get('glyceryl-stearate-peg-100')).toBeLessThanOrEqual(0.036)
    expect(made.get(gum)).toBeGreaterThanOrEqual(0.0038)
  })

  test('[R26] undone by a strike-out, the earlier targets count again', () => {
    const bench = emulsifierOver()
    const before = fingerprint(bench.state)
    bench.settle('extra')
    bench.strike(bench.events.at(-1)?.id ?? '')
    expect(bench.state.totalUg).toBe(grams(500))
    expect(targetOf(bench.state, 'c-panthenol')).toBe(grams('6.65'))
    expect(JSON.parse(fingerprint(bench.state))[0].steps).toEqual(JSON.parse(before)[0].steps)
    expect(offerOf(bench, 'extra').totalUg).toBe(grams('517.23'))
  })

  test('[R26] what the shelf does not hold cannot be added, and is named', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-emulsifier', '18.62')
    const lots = bench.state.lotsOfLine.get('shea-butter') ?? []
    const onHand = new Map([...bench.state.lotsOfLine.values()].flat().map((lot) => [lot, grams(5000)]))
    expect(offerOf(bench, 'scale', onHand).feasible).toBe(true)
    for (const lot of lots) onHand.set(lot, grams(10))
    expect(offerOf(bench, 'scale', onHand)).toMatchObject({
      feasible: false,
      why: { code: 'STOCK_TOO_SHORT', id: 'shea-butter', stockUg: grams(10 * lots.length) },
    })
  })
})

describe('several deviations', () => {
  test('[R27] at once are settled by one way on, and reopened together when it is struck out', () => {
    const bench = openTestBench(lotionHeader())
    bench.weigh('b-emulsifier', '18.62')
    bench.weigh('b-shea', '11')
    bench.settle('scale')
    expect(bench.state.totalUg).toBe(grams(550))
    expect([...bench.state.deviations.values()].every((each) => each.settled?.how === 'scale')).toBe(true)
    expect(statusOf(bench.state, 'b-emulsifier')).toBe('part')
    const chosen = bench.events.at(-1)?.id ?? ''
    bench.strike(chosen)
    expect([...bench.state.deviations.values()].some((each) => each.settled)).toBe(false)
    expect(bench.state.totalUg).toBe(grams(500))
  })

  test('[R27] what can still come out of a cup asks for no larger batch', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-emulsifier')
    bench.weigh('b-emulsifier', '18.62')
    bench.weigh('c-tocopherol', '1.9')
    expect(bench.state.deviations.size).toBe(2)
    expect(offerOf(bench, 'extra').totalUg).toBe(grams('517.23'))
  })
})

describe('limits over several lines', () => {
  const withLimit = (max: number): BatchHeader => {
    const header = lotionHeader()
    const of = { kind: 'function' as const, function: 'emulsifier' }
    const sharedLimits = [{ id: 'emulsifiers', name: 'All emulsifiers', of, max }]
    return { ...header, revision: { ...header.revision, sharedLimits } }
  }
  const functions = (header: BatchHeader) =>
    header.materials.map((material) =>
      ['glyceryl-stearate-peg-100', 'cetearyl-alcohol'].includes(material.id)
        ? { ...material, function: 'emulsifier' }
        : material,
    )

  test('[R32] are kept by the ways that promise every limit, with the solver where the closed form breaks one', async () => {
    const plain = withLimit(0.0602)
    const bench = openTestBench({ ...plain, materials: functions(plain) })
    runUpTo(bench, 'b-emulsifier')
    bench.weigh('b-emulsifier', '18')
    expect(needsSolver(bench.state)).toBe(true)
    const offers = await remediesWithin(bench.state, bench.deviation().id)
    const extra = offers.find(({ remedy }) => remedy === 'extra')
    expect(extra).toMatchObject({ feasible: true, breaks: 0 })
    const { totalUg = 0, heldBackUg = 0, targets = [] } = extra ?? {}
    const figures = { totalUg, heldBackUg, targets }
    bench.intend({ do: 'settle', deviation: bench.deviation().id, remedy: 'extra', reason: 'x', figures })
    runUpTo(bench, 'sample')
    const made = compositionAsMade(bench.state.ledger)
    const sum = (made.get('glyceryl-stearate-peg-100') ?? 0) + (made.get('cetearyl-alcohol') ?? 0)
    expect(sum).toBeLessThanOrEqual(0.0602 + 1e-8)
  })
})

describe('what is chosen', () => {
  test('[R33] is checked against the batch: figures that do not hold are refused', () => {
    const bench = emulsifierOver()
    const { totalUg, heldBackUg, targets } = offerOf(bench, 'extra')
    const settle = (figures: { totalUg?: number; heldBackUg?: number; targets?: typeof targets }) => ({
      do: 'settle' as const,
      deviation: bench.deviation().id,
      remedy: 'extra' as const,
      reason: 'x',
      figures: { totalUg, heldBackUg, targets, ...figures },
    })
    const first = targets[0]
    if (!first) throw new Error('no target')
    for (const bad of [
      { totalUg: totalUg + 1000 },
      { heldBackUg: -1 },
      { totalUg: grams(505), heldBackUg: heldBackUg - (totalUg - grams(505)) },
      { targets: [{ ...first, toUg: -1 }] },
      { targets: [...targets, first] },
      { targets: [{ step: 'a-gum', line: gum, fromUg: grams(2), toUg: grams(3) }, ...targets] },
      { targets: [{ ...first, line: gum }] },
    ])
      expect(bench.refusal(settle(bad)).code).toBe('REMEDY_IMPOSSIBLE')
    bench.intend(settle({}))
    expect(bench.state.totalUg).toBe(grams('517.23'))
  })

  test('[R33] two ways that ask for the same are offered once', () => {
    const offers = offersOf(emulsifierOver()).filter(({ feasible, remedy }) => feasible && remedy !== 'discard')
    const keys = offers.map(({ totalUg, heldBackUg, targets }) => JSON.stringify([totalUg, heldBackUg, targets]))
    expect(new Set(keys).size).toBe(keys.length)
  })
})

describe('a reading that is not recorded yet', () => {
  test('[R34] past its band in a vessel tells the cheapest way out, and writes nothing', () => {
    const bench = openTestBench(lotionHeader())
    runUpTo(bench, 'b-emulsifier')
    const before = fingerprint(bench.state)
    const reading = { mode: 're-tare', readingUg: grams('18.62') } as const
    const offer = forewarn(bench.state, { step: 'b-emulsifier', reading }, bench.nowMs)
    expect(offer).toMatchObject({ feasible: true, breaks: 0, endsUg: grams('517.23') })
    expect(fingerprint(bench.state)).toBe(before)
  })

  test('[R34] within its band, in a cup or past what the balance carries there is nothing to warn of', () => {
    const bench = openTestBench(lotionHeader())
    const at = (step: string, text: string) =>
      forewarn(bench.state, { step, reading: { mode: 're-tare', readingUg: grams(text) } }, bench.nowMs)
    expect(at('b-emulsifier', '17.5')).toBeNull()
    expect(at('c-tocopherol', '3')).toBeNull()
    expect(at('b-emulsifier', '90000')).toBeNull()
  })
})
