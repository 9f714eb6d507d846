import { describe, expect, test } from 'vitest'
import { createFormat } from '../../../../src/app/format'
import { adjustSentences, leftOutWords } from '../../../../src/app/refusals/adjusting'
import { meantBy } from '../../../../src/batch/absurd'
import { type Adjusting, adviceFor } from '../../../../src/batch/adjusting'
import { phPicture } from '../../../../src/places/run/cards/ph-picture'
import { meterWords, pouringWords, stopWords, whyWords } from '../../../../src/places/run/cards/ph-words'
import type { StopReason } from '../../../../src/trade/acidity'
import { grams, openTestBench } from '../../../support/batch'
import { lotionHeader } from '../../../support/formulas'
import { runUpTo } from '../../../support/run'

const step = 'adjust-ph'
const format = createFormat('.', 'en-GB')

/** Readings with what went in before each. */
function adjusting(...course: readonly (readonly [string, number])[]): Adjusting {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, step)
  for (const [portion, value] of course) {
    if (portion !== '') bench.intend({ do: 'adjust', step, netUg: grams(portion) })
    bench.measure({ step, check: 'ph', property: 'pH', label: 'pH', value })
  }
  const found = adviceFor(bench.state, step)
  if (found === null) throw new Error('no adjustment')
  return found
}

const whyOf = (given: Adjusting): string => {
  if (!given.advice.ok || given.advice.value.do !== 'add') throw new Error('nothing is proposed')
  const { lead, text } = whyWords(given.advice.value, given, format)
  return `${lead} ${text}`
}

describe('what the pH card says', () => {
  test('[G53] why so much is one line: what the last portion did, and what it must stay clear of', () => {
    expect(whyOf(adjusting(['', 6.31]))).toMatch(
      /^Why 0.\d{3}.g: how strongly this batch holds its pH is not known yet/,
    )
    expect(whyOf(adjusting(['', 6.31], ['0.5', 5.96], ['0.5', 5.64]))).toMatch(
      /^Why 0.\d{3}.g: (the last 0.500.g took 0.32 off\. .*4\.9|it is the largest portion)/,
    )
  })

  test('[G53] a stop says whether all is well, and what to do where it is not', () => {
    const inside = adjusting(['', 6.31], ['2', 5.1])
    const words = (why: StopReason) => stopWords(why, inside, format)
    expect(words('in-window')).toMatchObject({ good: true, lead: 'in the window' })
    expect(words('in-window').text).toMatch(/^2.000.g is in, 0.500.g less than expected: make-up puts water/)
    expect(words('near-far-edge')).toMatchObject({ good: true, lead: 'close to 4.9: leave it' })
    expect(words('past-far-edge').text).toContain('Add a little base as unplanned')
    expect(words('wrong-adjuster').text).toBe(
      'It needs a base; Lactic acid 10 % is an acid and would take it further off.',
    )
  })

  test('[G53] why nothing is proposed is a sentence that says what would help', () => {
    const reading = { entry: 'e', atMs: 0, ph: 6, ratio: 0, massUg: 1, addedUg: 0, sampleC: 41 }
    for (const say of Object.values(adjustSentences)) {
      const sentence = (say as (refusal: unknown) => string)({ ph: 12, why: 'hot', names: ['A', 'B'], reading })
      expect(sentence).toMatch(/^[A-Z].*\.$/)
      expect(sentence).not.toMatch(/undefined|!/)
    }
    expect(leftOutWords('hot', 41)).toContain('at 41 °C. Cool it below 30 °C')
  })

  test('[G51] the meter is warned of in words, and passed over where it is in order', () => {
    expect(meterWords({ ageMs: 1, slopePercent: 98, old: false, worn: false }, format)).toBeNull()
    expect(meterWords({ ageMs: 26 * 3_600_000, slopePercent: 93.5, old: true, worn: true }, format)).toBe(
      'The pH meter has a slope of 93.5 %, not 95–105 %, and was calibrated 26 h ago: calibrate it.',
    )
    expect(meterWords(null, format)).toContain('No calibration')
  })

  test('[G53] caustics and acids say how they go in', () => {
    expect(pouringWords('caustic')).toContain('Never water onto caustic')
    expect(pouringWords('acid')).toContain('never the product into the acid')
    expect(pouringWords('dust')).toBeNull()
  })

  test('[G7] a pH of 71 asks for 7.1, and a viscosity of 71 asks nothing', () => {
    expect(meantBy('pH', 71)).toBe(7.1)
    expect(meantBy('pH', 143)).toBeUndefined()
    expect(meantBy('pH', 7.1)).toBeUndefined()
    expect(meantBy('viscosity', 71)).toBeUndefined()
  })
})

describe('what the pH card draws', () => {
  test('[G53] readings against grams, the window, and the addition to where it should lead', () => {
    const given = adjusting(['', 6.31], ['0.5', 5.96], ['0.4', 5.7])
    const picture = phPicture(given, format)
    expect(picture.points.map(({ x, y }) => [x, y])).toEqual([
      [0, 6.31],
      [0.5, 5.96],
      [0.9, 5.7],
    ])
    expect(picture.zone).toEqual({ from: 4.9, to: 5.3, text: 'window 4.9 to 5.3' })
    if (!given.advice.ok || given.advice.value.do !== 'add') throw new Error('nothing is proposed')
    expect(picture.step?.toX).toBeCloseTo(0.9 + given.advice.value.doseUg / 1e6, 9)
    expect(picture.ahead?.at(-1)).toEqual({ x: picture.step?.toX, y: picture.step?.y })
    expect(picture.band?.at(-1)?.low).toBeLessThanOrEqual(picture.step?.y ?? 0)
  })

  test('[G53] of two readings of one amount the last is drawn, unless they contradict each other', () => {
    expect(phPicture(adjusting(['', 6.31], ['', 6.28]), format).points).toMatchObject([{ y: 6.28, text: '6.28 now' }])
    expect(phPicture(adjusting(['', 6.31], ['', 5.9]), format).points).toHaveLength(2)
  })
})
