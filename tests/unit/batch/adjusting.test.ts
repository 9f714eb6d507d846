import { describe, expect, test } from 'vitest'
import { adviceFor, type EarlierBatch, earlierBatchOf } from '../../../src/batch/adjusting'
import type { BatchHeader } from '../../../src/batch/header'
import type { Bodies } from '../../../src/batch/kinds'
import { contentsOf, inSink, massIn } from '../../../src/trade/ledger'
import type { Micrograms } from '../../../src/trade/mass'
import { gramsFromMicrograms } from '../../../src/trade/mass-ratio'
import { type Mixture, phOf } from '../../bench/ph/mixture'
import { grams, openTestBench, type TestBench } from '../../support/batch'
import { lotionHeader, withLots, withSteps } from '../../support/formulas'
import { runUpTo } from '../../support/run'

const step = 'adjust-ph'
const line = 'lactic-acid-10'
const dilution = { kind: 'dilution', fraction: 0.1 } as const

/** 12 mmol of buffer per kg round pH 5.6, which starts at 6.31. */
const lotion = (massG: number): Mixture => {
  const mixture: Mixture = {
    mass: massG,
    waterFraction: 0.75,
    sidMol: 0,
    buffers: [{ name: 'thickener', sp: { dist: [4.9, 5.3, 5.6, 5.9, 6.3] }, mol: (12 * massG) / 1e6 }],
    adjuster: { name: 'lactic acid', wTrue: 0.1, mw: 90.08, sid: 0, sp: { z0: 0, pKas: [3.86] } },
  }
  const atStart = (sidMol: number): number => phOf({ ...mixture, sidMol }, 0)
  let [low, high] = [0, 1]
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2
    if (atStart(middle) < 6.31) low = middle
    else high = middle
  }
  return { ...mixture, sidMol: low }
}

const atPh = (header: BatchHeader = lotionHeader()): TestBench => {
  const bench = openTestBench(header)
  runUpTo(bench, step)
  return bench
}

const read = (bench: TestBench, value: number, more: Partial<Bodies['measured']> = {}): void =>
  bench.measure({ step, check: 'ph', property: 'pH', label: 'pH', value, basis: dilution, sampleC: 25, ...more })

const add = (bench: TestBench, massUg: Micrograms): void => {
  bench.intend({ do: 'adjust', step, netUg: massUg })
}

const adviceOf = (bench: TestBench, history: readonly EarlierBatch[] = []) => {
  const advice = adviceFor(bench.state, step, history)?.advice
  if (!advice?.ok) throw new Error(advice?.refusal.code)
  return advice.value
}

const refusalOf = (bench: TestBench) => {
  const advice = adviceFor(bench.state, step)?.advice
  return advice?.ok ? undefined : advice?.refusal
}

/** Does what is advised until it says stop; the pH is that of what the ledger says is in the beaker. */
function adjust(bench: TestBench, history: readonly EarlierBatch[] = [], sampleUg = grams('5')): number {
  const mixture = lotion(gramsFromMicrograms(massIn(bench.state.ledger, 'main')))
  for (let addition = 0; addition < 20; addition += 1) {
    const acidUg = contentsOf(bench.state.ledger, 'main').get(line) ?? 0
    const whole = gramsFromMicrograms(massIn(bench.state.ledger, 'main') - acidUg) / mixture.mass
    read(bench, Number(phOf(mixture, gramsFromMicrograms(acidUg) / whole).toFixed(2)), { sampleUg })
    const advice = adviceOf(bench, history)
    if (advice.do !== 'add') return addition
    add(bench, advice.doseUg)
  }
  throw new Error('never stops')
}

/** Without a largest portion. */
const uncapped = withSteps(lotionHeader(), (each) => {
  if (each.kind !== 'adjust') return each
  const { portionUg: _, ...rest } = each
  return rest
})

describe('the advice for an adjustment', () => {
  test('[L78] it leads from the first reading into the window, every gram and every sample in the ledger', () => {
    const bench = atPh()
    const beforeUg = bench.massIn('main')
    const additions = adjust(bench)
    const last = bench.state.measurements.at(-1)?.body.value ?? 0
    expect(last).toBeGreaterThanOrEqual(4.94)
    expect(last).toBeLessThanOrEqual(5.26)
    const { addedUg = 0 } = adviceFor(bench.state, step) ?? {}
    expect(addedUg).toBe(bench.step(step).netUg)
    expect(inSink(bench.state.ledger, 'sampled')).toBe((additions + 1) * grams('5'))
    expect(bench.massIn('main')).toBe(beforeUg + addedUg - (additions + 1) * grams('5'))
  })

  test('[L78] samples take adjuster with them, and the advice reckons with what is left', () => {
    const without = atPh()
    const withSamples = atPh()
    const proposed = [without, withSamples].map((bench, index) => {
      read(bench, 6.31)
      add(bench, grams('1'))
      read(bench, 5.9, index === 1 ? { sampleUg: grams('100') } : {})
      const advice = adviceOf(bench)
      return advice.do === 'add' ? advice.doseUg : 0
    })
    const [whole = 0, less = 0] = proposed
    const totalUg = without.massIn('main')
    expect(less / whole).toBeCloseTo((totalUg - grams('100')) / totalUg, 2)
  })

  test('[L78] a weaker lot of the adjuster takes more, and what went in of the other counts by its strength', () => {
    const weak = (lots: BatchHeader['lots'][number]['lots']) => lots.map((lot) => ({ ...lot, assay: 0.05 }))
    const [strong, half] = [atPh(uncapped), atPh(withLots(uncapped, line, weak))].map((bench, index) => {
      read(bench, 6.31)
      add(bench, grams(index === 0 ? '0.5' : '1'))
      read(bench, 5.96)
      return adviceOf(bench)
    })
    if (strong?.do !== 'add' || half?.do !== 'add') throw new Error('stops')
    expect(half.doseUg / strong.doseUg).toBeCloseTo(2, 1)
  })

  test('[L79] an earlier batch of the formula shortens the way, at any size', () => {
    const first = atPh()
    const alone = adjust(first)
    const learnt = earlierBatchOf(first.state, 'ph')
    if (learnt === null) throw new Error('nothing was learnt')
    expect(learnt.name).toBe(first.state.header.shortName)
    const next = atPh(lotionHeader({ size: '2000' }))
    expect(adjust(next, [learnt])).toBeLessThan(alone)
    expect(adviceFor(next.state, step, [learnt])).toMatchObject({ earlier: learnt.name })
    expect(earlierBatchOf(atPh().state, 'ph')).toBeNull()
  })

  test('[L79] what it tells stays when the batch is filled and gone', () => {
    const bench = atPh()
    adjust(bench)
    const before = earlierBatchOf(bench.state, 'ph')
    bench.finish(step)
    runUpTo(bench, 'clean')
    expect(bench.massIn('main')).toBe(0)
    expect(earlierBatchOf(bench.state, 'ph')).toEqual(before)
  })
})

describe('which readings count', () => {
  test('[L77] a reading of another basis is left out, and it says so', () => {
    const bench = atPh()
    read(bench, 6.31)
    read(bench, 6.02, { basis: { kind: 'neat' } })
    expect(adviceFor(bench.state, step)?.readings.map(({ leftOut }) => leftOut)).toEqual([undefined, 'basis'])
    expect(refusalOf(bench)).toMatchObject({ code: 'PH_LEFT_OUT', why: 'basis' })
    read(bench, 6.3)
    expect(adviceOf(bench).do).toBe('add')
  })

  test('[L77] of two temperatures more than 3 °C apart the later one counts', () => {
    const bench = atPh()
    read(bench, 6.31, { sampleC: 21.9 })
    add(bench, grams('0.5'))
    read(bench, 5.96, { sampleC: 25 })
    expect(adviceFor(bench.state, step)?.readings.map(({ leftOut }) => leftOut)).toEqual(['apart', undefined])
    const near = atPh()
    read(near, 6.31, { sampleC: 22 })
    read(near, 6.31)
    expect(adviceFor(near.state, step)?.readings.map(({ leftOut }) => leftOut)).toEqual([undefined, undefined])
  })

  test('[L77] above 30 °C the sample is to be cooled first', () => {
    const bench = atPh()
    read(bench, 6.31, { sampleC: 30.5 })
    expect(refusalOf(bench)).toMatchObject({ code: 'PH_LEFT_OUT', why: 'hot' })
    read(bench, 6.31, { sampleC: 30 })
    expect(refusalOf(bench)).toBeUndefined()
  })

  test('[L77] before the first reading, and after a portion, it asks for one', () => {
    const bench = atPh()
    expect(refusalOf(bench)).toEqual({ code: 'PH_NOT_READ' })
    read(bench, 6.31)
    add(bench, grams('0.5'))
    expect(refusalOf(bench)).toEqual({ code: 'PH_NOT_READ_SINCE' })
  })

  test('[L74] readings that contradict each other say that the meter has not settled, until a second one agrees', () => {
    const bench = atPh()
    read(bench, 6.31)
    read(bench, 6.05)
    expect(adviceOf(bench)).toMatchObject({ do: 'read-again', contradiction: { how: 'differ' } })
    read(bench, 6.08)
    expect(adviceOf(bench).do).toBe('add')
    add(bench, grams('0.5'))
    read(bench, 6.4)
    expect(adviceOf(bench)).toMatchObject({ do: 'read-again', contradiction: { how: 'against' } })
    read(bench, 5.8)
    expect(adviceOf(bench)).toMatchObject({ do: 'read-again', contradiction: { how: 'differ' } })
    read(bench, 5.79)
    expect(adviceOf(bench).do).toBe('add')
  })

  test('[L74] a struck reading contradicts nothing', () => {
    const bench = atPh()
    read(bench, 6.31)
    read(bench, 3.6)
    expect(adviceOf(bench).do).toBe('read-again')
    bench.strike(bench.state.measurements.at(-1)?.id ?? '')
    expect(adviceOf(bench).do).toBe('add')
  })
})
