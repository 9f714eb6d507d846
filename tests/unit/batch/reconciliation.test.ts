import { describe, expect, test } from 'vitest'
import { lossCheckOf } from '../../../src/batch/reconciliation'
import { recordOf } from '../../../src/batch/record'
import { summaryOf } from '../../../src/batch/summary-of'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const tare = '312.46'

/** Everything done up to the filling: 410 g stands in the main beaker. */
function atFill(): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, 'sample')
  bench.intend({ do: 'sample', step: 'sample', vessel: 'main', massUg: grams(90), jars: 3, purpose: 'checks' })
  return bench
}

const fill = (text: string, more: { before?: string; after?: string; units?: number } = {}) =>
  ({
    do: 'fill',
    step: 'fill',
    vessel: 'main',
    massUg: grams(text),
    units: more.units ?? 4,
    ...(more.before === undefined ? {} : { grossBeforeUg: grams(more.before) }),
    ...(more.after === undefined ? {} : { grossAfterUg: grams(more.after) }),
  }) as const

const gross = (text: string): string => String(Number(tare) + Number(text))

describe('filling by the vessel', () => {
  test('[L86] what stays in the vessel by its reading is left there, and no loss unexplained', () => {
    const bench = atFill()
    bench.intend(fill('404', { before: gross('410'), after: gross('4.5') }))
    expect(lossCheckOf(bench.state).sums).toMatchObject({
      filledUg: grams(404),
      residueUg: grams('4.5'),
      unexplainedUg: grams('1.5'),
    })
    expect(recordOf(bench.state).mass.fills[0]).toMatchObject({ units: 4, lighterUg: grams('405.5') })
  })

  test('[L86] unread, what the books hold still is unexplained; more than they hold is so the other way', () => {
    const unread = atFill()
    unread.intend(fill('404'))
    expect(lossCheckOf(unread.state).sums).toMatchObject({ residueUg: 0, unexplainedUg: grams(6) })
    const more = atFill()
    more.intend(fill('404', { after: gross('8') }))
    expect(lossCheckOf(more.state).sums).toMatchObject({ residueUg: grams(8), unexplainedUg: grams(-2) })
  })

  test('[L86] without a tare the two readings alone tell what the units do not hold', () => {
    const header = lotionHeader()
    const bench = openTestBench({
      ...header,
      vessels: header.vessels.map(({ tareUg, ...each }) =>
        each.id === 'main' || tareUg === undefined ? each : { ...each, tareUg },
      ),
    })
    bench.pass('a-water', 'NO_TARE:main')
    for (const { id } of bench.state.plan.steps) if (id !== 'a-water') bench.pass(id, 'NO_TARE:main')
    runUpTo(bench, 'fill')
    const heldUg = bench.massIn('main')
    const massUg = heldUg - grams(6)
    bench.intend({ ...fill('1'), massUg, grossBeforeUg: grams(900), grossAfterUg: grams(900) - massUg - grams(2) })
    expect(lossCheckOf(bench.state).sums).toMatchObject({ residueUg: grams(4), unexplainedUg: grams(2) })
  })

  test('[L86] a struck filling takes its reading with it', () => {
    const bench = atFill()
    const [entry] = bench.intend(fill('404', { after: gross('4.5') }))
    bench.strike(entry?.id ?? '')
    expect(lossCheckOf(bench.state).sums).toMatchObject({ filledUg: 0, residueUg: 0, unexplainedUg: null })
  })

  test('[L86] units are whole, the vessel gets lighter, and never lighter than empty', () => {
    const bench = atFill()
    for (const units of [0, -1, 2.5, Number.NaN]) expect(bench.refusal(fill('404', { units })).code).toBe('UNITS_BAD')
    expect(bench.refusal(fill('404', { before: gross('4'), after: gross('410') })).code).toBe('VESSEL_NOT_LIGHTER')
    expect(bench.refusal(fill('404', { before: gross('4'), after: gross('4') })).code).toBe('VESSEL_NOT_LIGHTER')
    expect(bench.refusal(fill('404', { after: '4.5' })).code).toBe('BELOW_TARE')
    expect(bench.refusal(fill('404', { before: '300' })).code).toBe('BELOW_TARE')
    expect(bench.refusal(fill('410.01')).code).toBe('MORE_THAN_HELD')
  })
})

describe('more unexplained than the formula lets pass', () => {
  const closed = (bench: TestBench) => {
    runUpTo(bench)
    return { do: 'close', decision: 'accept' } as const
  }

  test('[L87] is flagged in the record and the list, and closing asks for a word of why', () => {
    const bench = atFill()
    bench.intend(fill('404'))
    expect(recordOf(bench.state).mass).toMatchObject({ isFlagged: true, unexplainedLimitUg: grams(5) })
    expect(summaryOf(bench.state).unexplainedUg).toBe(grams(6))
    const close = closed(bench)
    expect(bench.refusal(close).code).toBe('REASON_MISSING')
    bench.intend({ ...close, note: 'it stuck to the stirrer' })
    expect(bench.state.stage).toBe('closed')
  })

  test('[L87] counts either way: more than was put in is as wrong as less', () => {
    const bench = atFill()
    bench.intend(fill('404', { after: gross('12') }))
    expect(summaryOf(bench.state).unexplainedUg).toBe(grams(-6))
  })

  test('[L87] up to the limit, explained, or with nothing filled yet, nothing is flagged', () => {
    const limit = atFill()
    limit.intend(fill('405'))
    expect(lossCheckOf(limit.state)).toMatchObject({ isFlagged: false, sums: { unexplainedUg: grams(5) } })
    limit.intend(closed(limit))

    const read = atFill()
    expect(lossCheckOf(read.state).isFlagged).toBe(false)
    read.intend(fill('380', { after: gross('30') }))
    expect(summaryOf(read.state).unexplainedUg).toBeUndefined()

    const spilled = atFill()
    spilled.intend(fill('404'))
    spilled.intend({ do: 'discard-cup', vessel: 'main', reason: 'rinsed away' })
    expect(lossCheckOf(spilled.state)).toMatchObject({
      isFlagged: false,
      sums: { unexplainedUg: 0, discardedUg: grams(6) },
    })
  })

  test('[L87] a formula that states no allowance flags nothing', () => {
    const header = lotionHeader()
    const { lossAllowance: _none, ...revision } = header.revision
    const bench = openTestBench({ ...header, revision })
    runUpTo(bench, 'fill')
    bench.intend(fill('100'))
    expect(lossCheckOf(bench.state)).toMatchObject({ limitUg: null, isFlagged: false })
  })
})
