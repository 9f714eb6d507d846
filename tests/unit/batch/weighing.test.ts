import { describe, expect, test } from 'vitest'
import { isDone, statusOf } from '../../../src/batch/progress'
import { summaryOf } from '../../../src/batch/summary-of'
import { weighingOf } from '../../../src/batch/weighing-of'
import { addedInAll, inSink } from '../../../src/trade/ledger'
import { heldInAll } from '../../../src/trade/ledger-sums'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader, withLots } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const open = (): TestBench => openTestBench(lotionHeader())
const weigh = (step: string, text: string) =>
  ({ do: 'weigh', step, reading: { mode: 're-tare', readingUg: grams(text) } }) as const

describe('a weighing', () => {
  test('[W1] inside its band a line is done, and the entry says what was aimed at', () => {
    const bench = open()
    bench.weigh('a-water', '348.85')
    expect(statusOf(bench.state, 'a-water')).toBe('done')
    expect(bench.events.at(-1)).toMatchObject({
      kind: 'weighed',
      source: { kind: 'typed', raw: '348.85' },
      body: {
        line: 'aqua',
        vessel: 'main',
        lot: 'lot-w-0831',
        balance: 'balance-2',
        netUg: grams('348.85'),
        targetUg: grams('348.85'),
        lowUg: grams('345.37'),
        highUg: grams('352.33'),
        readings: [grams('348.85')],
      },
    })
    expect(bench.refusal(weigh('a-water', '1')).code).toBe('STEP_DONE')
  })

  test.each([
    ['345.36', 'part'],
    ['345.37', 'done'],
    ['352.33', 'done'],
    ['352.34', 'over'],
  ])('[W1] %s g of water is %s', (text, status) => {
    const bench = open()
    bench.weigh('a-water', text)
    expect(statusOf(bench.state, 'a-water')).toBe(status)
  })

  test('[W2] under target is part weighing, not a deviation: several containers and lots make one line', () => {
    const header = withLots(lotionHeader(), 'squalane', ([lot]) => (lot ? [lot, { ...lot, id: 'lot-next' }] : []))
    const bench = openTestBench(header)
    bench.weigh('b-squalane', '9.4')
    expect(weighingOf(bench.state, 'b-squalane')).toMatchObject({
      countedUg: grams('9.4'),
      leftUg: grams('5.6'),
      leftLowUg: grams('5.45'),
      leftHighUg: grams('5.75'),
    })
    bench.weigh('b-squalane', '5', { lot: 'lot-next' })
    bench.weigh('b-squalane', '0.6', { lot: 'lot-next' })
    expect(isDone(bench.state, 'b-squalane')).toBe(true)
    expect(bench.state.deviations.size).toBe(0)
    expect(bench.state.usedByLot.get('lot-sq-115')).toBe(grams('9.4'))
    expect(bench.state.usedByLot.get('lot-next')).toBe(grams('5.6'))
  })

  test('[W2] a cumulative reading and one by difference give the same net', () => {
    const bench = open()
    const cumulative = { mode: 'cumulative', readingUg: grams('45.02'), previousUg: grams('10.02') } as const
    bench.intend({ do: 'weigh', step: 'b-triglyceride', reading: cumulative })
    const difference = { mode: 'by-difference', beforeUg: grams('88.4'), afterUg: grams('78.4') } as const
    bench.intend({ do: 'weigh', step: 'b-shea', reading: difference })
    expect(bench.step('b-triglyceride').netUg).toBe(grams(35))
    expect(bench.step('b-shea').netUg).toBe(grams(10))
    expect(bench.events.at(-1)?.body).toMatchObject({ readings: [grams('88.4'), grams('78.4')] })
  })

  test('[W3] what cannot be weighed is refused and changes nothing', () => {
    const bench = open()
    expect(bench.refusal(weigh('a-water', '0')).code).toBe('NET_NOT_POSITIVE')
    const same = { mode: 'by-difference', beforeUg: grams(5), afterUg: grams(6) } as const
    expect(bench.refusal({ do: 'weigh', step: 'b-shea', reading: same }).code).toBe('NET_NOT_POSITIVE')
    const half = { mode: 're-tare', readingUg: 0.5 } as const
    expect(bench.refusal({ do: 'weigh', step: 'b-shea', reading: half }).code).toBe('MASS_NOT_WHOLE')
    expect(bench.refusal(weigh('b-shea', '221'))).toMatchObject({ code: 'OVER_BALANCE', capacityUg: grams(220) })
    expect(bench.refusal(weigh('a-water', '3488.5'))).toMatchObject({ code: 'OVER_BALANCE', balance: 'Balance 2' })
    expect(bench.refusal(weigh('a-water', '800.01'))).toMatchObject({ code: 'OVER_VESSEL', roomUg: grams(800) })
    expect(bench.refusal(weigh('nowhere', '1')).code).toBe('NO_SUCH_STEP')
  })

  test('[W4] a line that a second person checks wants another person than who weighs', () => {
    const bench = open()
    const preservative = weigh('c-preservative', '5')
    expect(bench.state.plan.byId.get('c-preservative')?.step.secondPerson).toBe(true)
    expect(bench.refusal(preservative).code).toBe('SECOND_PERSON_MISSING')
    expect(bench.refusal({ ...preservative, checkedBy: 'person-rk' }).code).toBe('SAME_PERSON')
    bench.weigh('c-preservative', '5', { checkedBy: 'person-jt' })
    expect(bench.events.at(-1)?.body).toMatchObject({ checkedBy: 'person-jt' })
  })

  test('[W4] where nobody checks in this batch, nobody is asked for', () => {
    const header = lotionHeader()
    const { checks: _nobody, ...people } = header.people
    const bench = openTestBench({ ...header, people })
    bench.intend(weigh('c-preservative', '5'))
    expect(isDone(bench.state, 'c-preservative')).toBe(true)
  })
})

describe('what is in a cup', () => {
  test('[W5] too much in a cup is taken out again, and the deviation is gone with it', () => {
    const bench = open()
    bench.weigh('a-propanediol', '24')
    expect(bench.deviation()).toMatchObject({ inCup: true, byUg: grams(4), direction: 'over' })
    bench.intend({ do: 'take-out', step: 'a-propanediol', massUg: grams(2), reason: '' })
    expect(statusOf(bench.state, 'a-propanediol')).toBe('over')
    bench.intend({ do: 'take-out', step: 'a-propanediol', massUg: grams('1.9'), reason: '' })
    expect(isDone(bench.state, 'a-propanediol')).toBe(true)
    expect(bench.step('a-propanediol').netUg).toBe(grams('20.1'))
    expect(inSink(bench.state.ledger, 'discarded')).toBe(grams('3.9'))
    expect(summaryOf(bench.state)).toMatchObject({ openDeviations: 0, deviations: 1 })
    expect(addedInAll(bench.state.ledger)).toBe(heldInAll(bench.state.ledger) + grams('3.9'))
  })

  test('[W5] taking out too much makes it part weighed again', () => {
    const bench = open()
    bench.weigh('a-propanediol', '24')
    bench.intend({ do: 'take-out', step: 'a-propanediol', massUg: grams(10), reason: '' })
    expect(statusOf(bench.state, 'a-propanediol')).toBe('part')
    bench.weigh('a-propanediol', '6')
    expect(isDone(bench.state, 'a-propanediol')).toBe(true)
  })

  test('[W5] nothing comes out of a vessel, out of a shared cup, or more than is in', () => {
    const bench = open()
    bench.weigh('b-shea', '12')
    const takeOut = (step: string, text: string) =>
      ({ do: 'take-out', step, massUg: grams(text), reason: 'x' }) as const
    expect(bench.refusal(takeOut('b-shea', '2')).code).toBe('NOT_IN_CUP')
    bench.weigh('a-propanediol', '20')
    expect(bench.refusal(takeOut('a-propanediol', '20.01')).code).toBe('MORE_THAN_HELD')
    expect(bench.refusal(takeOut('a-propanediol', '0')).code).toBe('MASS_NOT_POSITIVE')
    bench.weigh('a-gum', '2.5')
    expect(bench.refusal(takeOut('a-gum', '0.5')).code).toBe('NOT_IN_CUP')
    expect(bench.deviation().inCup).toBe(false)
  })

  test('[W6] a discarded cup goes to waste with its mass, and its lines are weighed again', () => {
    const bench = open()
    bench.weigh('a-propanediol', '20')
    bench.weigh('a-gum', '2.5')
    bench.intend({ do: 'discard-cup', vessel: 'slurry', reason: 'too much gum' })
    expect(bench.massIn('slurry')).toBe(0)
    expect(inSink(bench.state.ledger, 'discarded')).toBe(grams('22.5'))
    expect(statusOf(bench.state, 'a-propanediol')).toBe('open')
    expect(statusOf(bench.state, 'a-gum')).toBe('waiting')
    expect([...bench.state.deviations.values()]).toMatchObject([{ settled: { how: 'discard' } }])
    expect(bench.state.usedByLot.get('lot-sg-214')).toBe(grams('2.5'))
    bench.weigh('a-propanediol', '20')
    bench.weigh('a-gum', '2')
    expect(isDone(bench.state, 'a-gum')).toBe(true)
    expect(bench.state.totalUg).toBe(grams(500))
  })

  test('[W6] an empty cup, an unknown one, and no reason are refused', () => {
    const bench = open()
    const discard = (vessel: string, reason = 'x') => ({ do: 'discard-cup', vessel, reason }) as const
    expect(bench.refusal(discard('slurry')).code).toBe('NOTHING_WEIGHED')
    expect(bench.refusal(discard('bucket')).code).toBe('UNKNOWN_VESSEL_HERE')
    bench.weigh('a-propanediol', '20')
    expect(bench.refusal(discard('slurry', ' ')).code).toBe('REASON_MISSING')
  })

  test('[W6] a vessel that is thrown away takes with it what was tipped into it; other vessels stay', () => {
    const bench = open()
    runUpTo(bench, 'a-heat')
    bench.weigh('b-shea', '10')
    const { heldBackUg } = bench.state
    bench.intend({ do: 'discard-cup', vessel: 'main', reason: 'lumps' })
    for (const step of ['a-water', 'a-phytate', 'a-propanediol']) expect(statusOf(bench.state, step)).toBe('open')
    for (const step of ['a-gum', 'a-slurry-in', 'a-hydrate', 'a-oat'])
      expect(statusOf(bench.state, step)).toBe('waiting')
    expect(isDone(bench.state, 'b-shea')).toBe(true)
    expect(bench.state.heldBackUg).toBe(heldBackUg)
    runUpTo(bench)
    expect(bench.state.doubts).toEqual([])
    expect(summaryOf(bench.state).done).toBe(bench.state.plan.steps.length)
    expect(bench.state.totalUg).toBe(grams(500))
  })

  test('[W6] rinsing water that was lost with a vessel may be used again', () => {
    const bench = open()
    runUpTo(bench, 'a-slurry-in')
    bench.charge('a-slurry-in', { rinse: '4' })
    expect(bench.state.heldBackUg).toBe(grams('13.5'))
    bench.intend({ do: 'discard-cup', vessel: 'main', reason: 'lumps' })
    expect(bench.state.heldBackUg).toBe(grams('17.5'))
  })

  test('[W6] what was accepted of a line that is thrown away is no part of the total any more', () => {
    const bench = open()
    bench.weigh('b-emulsifier', '18.62')
    bench.settle('accept')
    expect(bench.state.totalUg).toBe(grams('501.12'))
    bench.intend({ do: 'discard-cup', vessel: 'oil', reason: 'dropped' })
    expect(bench.state.totalUg).toBe(grams(500))
    bench.weigh('b-emulsifier', '18.5')
    bench.settle('accept')
    expect(bench.state.totalUg).toBe(grams(501))
    bench.intend({ do: 'discard-cup', vessel: 'oil', reason: 'dropped again' })
    expect(bench.state.totalUg).toBe(grams(500))
  })

  test('[W7] after its charge a line goes on in the vessel its cup went into', () => {
    const bench = open()
    runUpTo(bench, 'a-hydrate')
    bench.intend({
      do: 'add-unplanned',
      name: 'Propanediol',
      vessel: 'slurry',
      netUg: grams(1),
      reason: 'rinsed with it',
    })
    expect(bench.massIn('slurry')).toBe(0)
    expect(weighingOf(bench.state, 'a-gum')).toMatchObject({ vessel: 'main', inCup: false })
  })
})
