import { describe, expect, test } from 'vitest'
import { whyNot } from '../../../src/app/refusals/ways-on'
import type { RemedyLine, RemedyProblem } from '../../../src/trade/remedy'
import { addTheLeast } from '../../../src/trade/remedy-least'
import type { RemedyRefusal } from '../../../src/trade/remedy-model'
import { plainWords } from '../../support/way-words'
import { gram, line, problem } from './remedy-bench'

function whyOf(lines: readonly RemedyLine[], more: Partial<RemedyProblem> = {}): RemedyRefusal {
  const remedy = addTheLeast(problem(lines, more))
  if (remedy.feasible) throw new Error('It was to be impossible')
  return remedy.why
}
const say = (refusal: RemedyRefusal): string =>
  whyNot(
    refusal,
    plainWords((id) => id),
  ).full

describe('[R18] an impossible remedy says why', () => {
  test('a line that needs a larger batch than the vessel holds', () => {
    const why = whyOf([line('water', 0.8, 50), line('oil', 0.2, 42)])
    expect(why).toEqual({
      code: 'LINES_CONFLICT',
      needs: { limit: 'high', id: 'oil' },
      neededUg: 200 * gram,
      allows: { limit: 'capacity' },
      allowedUg: 150 * gram,
    })
    expect(say(why)).toBe('To dilute oil the batch must come to at least 200.00 g, but the vessel holds 150.00 g.')
  })

  test('a line that needs a larger batch than another that is closed, or runs out, allows', () => {
    const closed = [line('water', 0.7, 50), line('oil', 0.2, 25.2), line('gum', 0.1, 9.5, { locked: true })]
    expect(whyOf(closed)).toMatchObject({
      code: 'LINES_CONFLICT',
      needs: { limit: 'high', id: 'oil' },
      neededUg: 120 * gram,
      allows: { limit: 'locked', id: 'gum' },
      allowedUg: 100 * gram,
    })
    expect(say(whyOf(closed))).toBe(
      'To dilute oil the batch must come to at least 120.00 g, but gum can no longer be added and allows at most 100.00 g.',
    )
    const short = closed.map((each) => (each.id === 'gum' ? { ...each, locked: false, stockUg: 950_000 } : each))
    expect(say(whyOf(short))).toBe(
      'To dilute oil the batch must come to at least 120.00 g, but the gum that is left allows at most 110.00 g.',
    )
  })

  test('a planned total, or what is in, beyond what a line allows', () => {
    const gum = line('gum', 0.1, 4.75, { locked: true })
    expect(say(whyOf([line('water', 0.9, 20), gum]))).toBe(
      'The batch is to come to 100.00 g, but gum can no longer be added and allows at most 50.00 g.',
    )
    const wide = line('water', 0.9, 55, { high: 1 })
    expect(say(whyOf([wide, gum], { minTotalUg: gram }))).toBe(
      'In already is 59.75 g, but gum can no longer be added and allows at most 50.00 g.',
    )
  })

  test('lines that are together too much at their least', () => {
    const lines = [
      line('water', 0.5, 80, { low: 0.4, high: 0.7 }),
      line('oil', 0.4, 60, { low: 0.3, high: 0.5 }),
      line('gum', 0.1, 0, { low: 0.1, high: 0.2 }),
    ]
    const why = whyOf(lines)
    expect(why).toEqual({
      code: 'MINIMUMS_EXCEED_TOTAL',
      totalUg: 150 * gram,
      minimumsUg: 155 * gram,
      ids: ['water'],
    })
    expect(say(why)).toBe('At 150.00 g the least of all lines comes to 155.00 g: too much is in of water.')
  })

  test('lines that together do not come to the total at their most', () => {
    const lines = [
      line('water', 0.9, 50, { low: 0, stockUg: 30 * gram }),
      line('phenoxyethanol', 0.01, 1.05, { low: 0 }),
      line('oil', 0.09, 9, { low: 0, locked: true }),
    ]
    const why = whyOf(lines)
    expect(why).toMatchObject({
      code: 'MAXIMUMS_BELOW_TOTAL',
      totalUg: 100 * gram,
      maximumsUg: 90.05 * gram,
      ids: ['water', 'oil'],
      allLocked: false,
    })
    expect(say(why)).toBe('Needs 100.00 g; all lines at their most come to 90.05 g, for want of water, oil.')
  })

  test('too much of one, and nothing that may be added to dilute it', () => {
    const lines = [
      line('water', 0.99, 99, { low: 0, high: 1, locked: true }),
      line('phenoxyethanol', 0.01, 1.2, { low: 0, high: 0.01, locked: true }),
    ]
    expect(say(whyOf(lines))).toBe(
      'There is too much phenoxyethanol, and nothing may be added to dilute it: all lines are closed.',
    )
  })

  test('a limit over several lines that what is in is past, and that nothing may dilute', () => {
    const conflict = { code: 'SHARED_LIMITS_CONFLICT', ids: ['phenoxyethanol'], at: 0.0104, limit: 0.01 } as const
    expect(say({ ...conflict, allLocked: true })).toBe(
      'Phenoxyethanol would stay above 1.00 %, and nothing may be added to dilute it: all lines are closed.',
    )
    expect(say({ ...conflict, ids: ['phenoxyethanol', 'actives'], at: 0.009, allLocked: false })).toBe(
      'Phenoxyethanol would stay below 1.00 % if actives is kept.',
    )
  })

  test('a stirrer that does not reach what is planned, or does not move what is needed', () => {
    const oil = [line('water', 0.8, 50), line('oil', 0.2, 30)]
    const stirred = { capacityUg: 500 * gram, stirsUg: { min: 20 * gram, max: 120 * gram } }
    expect(say(whyOf(oil, stirred))).toBe(
      'To dilute oil the batch must come to at least 142.86 g, but the stirrer moves at most 120.00 g.',
    )
    const gum = [line('water', 0.9, 20), line('gum', 0.1, 4.75, { locked: true })]
    expect(say(whyOf(gum, { ...stirred, minTotalUg: gram, stirsUg: { min: 80 * gram, max: 120 * gram } }))).toBe(
      'The stirrer reaches nothing below 80.00 g, but gum can no longer be added and allows at most 50.00 g.',
    )
  })

  test('a range that contradicts itself, and something of which nothing is allowed', () => {
    expect(say(whyOf([line('water', 1, 0, { low: 0.6, high: 0.5 })]))).toBe(
      'The range of water has its least above its most.',
    )
    expect(whyOf([line('water', 1, 50), line('mica', 0, 1, { low: 0, high: 0 })])).toEqual({
      code: 'LINE_NOT_IN_FORMULA',
      id: 'mica',
    })
  })

  const rest: readonly RemedyRefusal[] = [
    { code: 'CLOSURE_CONFLICT', neededUg: 120 * gram, allowedUg: 110 * gram },
    { code: 'COST_UNKNOWN', id: 'oil' },
    { code: 'SHARED_LIMITS_CONFLICT', ids: ['preservatives', 'active matter'], allLocked: false },
    { code: 'STIRRER_TOO_SMALL', neededUg: 120 * gram, mostUg: 110 * gram },
    { code: 'SIDE_VESSEL_TOO_SMALL', id: 'Oil beaker', neededUg: 120 * gram, capacityUg: 100 * gram },
    { code: 'NOT_SOLVED' },
    { code: 'MINIMUMS_EXCEED_TOTAL', totalUg: gram, minimumsUg: 2 * gram, ids: ['a', 'b', 'c', 'd', 'e'] },
  ]
  test.each(rest)('$code in a sentence', (refusal) => {
    expect(say(refusal)).toMatch(/^[A-Z].*\.$/)
    expect(say(refusal)).not.toMatch(/undefined|NaN/)
  })
})
