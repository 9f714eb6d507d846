import { describe, expect, test } from 'vitest'
import { advisePh, type PhAdvice, type PhProblem } from '../../../src/trade/acidity'
import { adjusterOf } from '../../../src/trade/adjusters'
import { microgramsFromGrams as g } from '../../../src/trade/mass'

const bottle = (name: string, fraction: number) => {
  const adjuster = adjusterOf([{ name, fraction }])
  if (!adjuster.ok) throw new Error(adjuster.refusal.code)
  return adjuster.value
}

/** A lotion that takes about 0.26 g of lactic acid 10 % for each half pH. */
const lotion = (...pairs: readonly (readonly [number, number])[]): PhProblem => ({
  massUg: g(500),
  window: { low: 4.9, high: 5.3 },
  adjuster: bottle('Lactic Acid', 0.1),
  stepUg: g(0.001),
  records: pairs.map(([grams, ph]) => ({ addedUg: g(grams), ph })),
})

const adviceOf = (problem: PhProblem): PhAdvice => {
  const advice = advisePh(problem)
  if (!advice.ok) throw new Error(advice.refusal.code)
  return advice.value
}

const dose = (problem: PhProblem) => {
  const advice = adviceOf(problem)
  if (advice.do !== 'add') throw new Error(`stops: ${advice.why}`)
  return advice
}

describe('the next addition', () => {
  test('[L70] a first addition is small, and says nothing of where it leads', () => {
    const advice = dose(lotion([0, 6.31]))
    expect(advice).toMatchObject({ why: 'first' })
    expect(advice.reaches).toBeUndefined()
    expect(advice.doseUg).toBeLessThan(g(0.1))
  })

  test('[L70] a further one lands short of the middle, and says where, and how far at the most', () => {
    const { reaches, doseUg } = dose(lotion([0, 6.31], [0.5, 5.96], [1, 5.64], [1.4, 5.38]))
    expect(doseUg % g(0.001)).toBe(0)
    expect(reaches?.expected).toBeGreaterThan(5.05)
    expect(reaches?.expected).toBeLessThan(5.3)
    expect(reaches?.furthest).toBeLessThanOrEqual(reaches?.expected ?? 0)
    expect(reaches?.furthest).toBeGreaterThan(4.9)
  })

  test('[L70] a class that is known to hold its pH strongly takes a larger first addition', () => {
    const unknown = dose(lotion([0, 6.31])).doseUg
    expect(dose({ ...lotion([0, 6.31]), capacity: 0.0015 }).doseUg).toBeGreaterThan(5 * unknown)
  })

  test('[L70] twice the batch takes twice the addition, and half the strength twice as much', () => {
    const one = lotion([0, 6.31], [0.5, 5.96])
    const large = {
      ...one,
      massUg: g(1000),
      records: one.records.map(({ addedUg, ph }) => ({ addedUg: 2 * addedUg, ph })),
    }
    expect(dose(large).doseUg / dose(one).doseUg).toBeCloseTo(2, 2)
    const weak = { ...large, massUg: g(500), adjuster: bottle('Lactic Acid', 0.05) }
    expect(dose(weak).doseUg / dose(one).doseUg).toBeCloseTo(2, 2)
  })

  test("[L70] an earlier batch's curve gives a bold first addition, and leads to the window", () => {
    const earlier = { ph: [4.8, 5.4, 6.3], molPerKg: [0.0036, 0.002, 0] }
    const advice = dose({ ...lotion([0, 6.31]), earlier })
    expect(advice).toMatchObject({ why: 'earlier' })
    expect(advice.doseUg).toBeGreaterThan(g(0.5))
    expect(advice.reaches?.expected).toBeGreaterThan(5.1)
    expect(advice.reaches?.furthest).toBeGreaterThan(4.9)
  })

  test('[L71] what the formula calls the largest portion is not passed', () => {
    const advice = dose({ ...lotion([0, 6.31], [0.5, 6.1]), mostUg: g(0.3) })
    expect(advice).toMatchObject({ doseUg: g(0.3), why: 'capped' })
  })

  test('[L71] of a step of the balance or less a weaker adjuster is proposed', () => {
    const rough = dose({ ...lotion([0, 6.31]), stepUg: g(0.1), massUg: g(50) })
    expect(rough).toMatchObject({ doseUg: g(0.1), why: 'least', dilute: true })
    expect(dose(lotion([0, 6.31], [0.5, 5.96])).dilute).toBe(false)
  })
})

describe('where it stops', () => {
  test('[L72] inside the window, a tenth of it away from both edges', () => {
    expect(adviceOf(lotion([0, 6.31], [2, 4.94]))).toEqual({ do: 'stop', why: 'in-window' })
    const plain = (ph: number) => adviceOf({ ...lotion([0, 6.31], [2, ph]), rule: 'plain' })
    expect(plain(5.26)).toEqual({ do: 'stop', why: 'in-window' })
    expect(plain(5.27)).toMatchObject({ do: 'add' })
  })

  test('[L72] a wary adviser, which knows that a reading can be off, goes a tenth further from the edge met first', () => {
    expect(adviceOf(lotion([0, 6.31], [2, 5.22]))).toEqual({ do: 'stop', why: 'in-window' })
    expect(adviceOf(lotion([0, 6.31], [2, 5.23]))).toMatchObject({ do: 'add' })
  })

  test('[L72] close to the far edge and past it nothing more goes in', () => {
    expect(adviceOf(lotion([0, 6.31], [2, 4.93]))).toEqual({ do: 'stop', why: 'near-far-edge' })
    expect(adviceOf(lotion([0, 6.31], [2, 4.5]))).toEqual({ do: 'stop', why: 'past-far-edge' })
  })

  test('[L72] an acid where a base is needed, and a base where an acid is needed, is told before anything goes in', () => {
    expect(adviceOf(lotion([0, 4.2]))).toEqual({ do: 'stop', why: 'wrong-adjuster' })
    const caustic = { ...lotion([0, 6.3]), adjuster: bottle('Sodium Hydroxide', 0.18) }
    expect(adviceOf(caustic)).toEqual({ do: 'stop', why: 'wrong-adjuster' })
  })

  test('[L72] without a reading, without a window, and with an adjuster that never gets there nothing is proposed', () => {
    expect(advisePh(lotion())).toEqual({ ok: false, refusal: { code: 'PH_NOT_READ' } })
    const shut = { ...lotion([0, 6.3]), window: { low: 5.3, high: 5.3 } }
    expect(advisePh(shut)).toEqual({ ok: false, refusal: { code: 'PH_WINDOW_BAD' } })
    const mild = { ...lotion([0, 8]), window: { low: 12.9, high: 13.9 }, adjuster: bottle('Triethanolamine', 0.99) }
    expect(advisePh(mild)).toMatchObject({ refusal: { code: 'ADJUSTER_CANNOT_REACH' } })
  })
})
