import { describe, expect, test } from 'vitest'
import { createFormat } from '../../../src/app/format'
import { loadSentences, sentenceOf } from '../../../src/app/refusals'
import { allSentences } from '../../../src/app/refusals/all'
import { gateWords } from '../../../src/app/refusals/gates'
import { whyNot } from '../../../src/app/refusals/ways-on'
import type { Gate, GateReason } from '../../../src/batch/gate'
import type { RemedyRefusal } from '../../../src/trade/remedy'
import { openTestBench } from '../../support/batch'
import { lotionHeader } from '../../support/formulas'
import { plainWords } from '../../support/way-words'

/** A value for every field that any refusal carries. */
const anything = {
  id: 'squalane',
  ids: ['aqua', 'glycerin'],
  total: 0.98,
  shortUg: 1_200_000,
  targetUg: 4_000,
  stepUg: 10_000,
  line: 'Squalane',
  step: 'b-squalane',
  vessel: 'Main beaker',
  check: 'ph',
  askedUg: 5_000_000,
  heldUg: 4_000_000,
  netUg: -1,
  kinds: ['hummed'],
  stage: 'closed',
  gates: [],
  massUg: 1,
  capacityUg: 2,
  balance: 'Balance 1',
  roomUg: 3,
  lot: 'SQ-115',
  kind: 'opened',
  temperatureC: 900,
  leastC: 0,
  mostC: 45,
  property: 'pH',
  value: 71,
  lossUg: 4,
  rinseUg: 5,
  heldBackUg: 6,
  text: '1.2.3',
  unit: 'stone',
  why: 'the file is gone.',
  version: 9,
  expected: 10,
  found: 8,
  bytes: 3e8,
  units: 2.5,
  beforeUg: 8,
  afterUg: 9,
  grossUg: 1,
  tareUg: 2,
  rpm: 90_000,
  diameterMm: 0.5,
  label: 'Viscosity',
  decision: 'accept',
  least: 1,
  most: 9,
  what: 'speed',
  day: 7,
  windowDays: 90,
  counted: 1,
  wanted: 3,
  cycles: 5,
  jar: '40 °C, week 4',
  was: '11000 mPa·s',
  days: 2,
  cause: 'full',
  done: 4,
  of: 9,
}

/** Where a field is another thing than elsewhere: of a file, a line is a number. */
const ofItsOwn: Readonly<Record<string, object>> = { FILE_DAMAGED: { line: 12 } }

/** A sentence: begins large (or with what was typed), ends with a full stop or question mark, shouts never. */
const isSentence = (text: string): boolean =>
  /^[\p{Lu}\d"−].*[.?]$/u.test(text) && !/[!]|undefined|NaN|\[object/.test(text)

describe('what a person reads', () => {
  test.each(Object.entries(allSentences))('[A51] %s has a sentence that ends as one, without shouting', (code, say) => {
    const sentence = (say as (refusal: unknown) => string)({ code, ...anything, ...ofItsOwn[code] })
    expect(isSentence(sentence), sentence).toBe(true)
  })

  test('[A51] the sentence of a refusal is that of its code', async () => {
    await loadSentences()
    expect(sentenceOf({ code: 'TARE_BAD' })).toBe('A tare must be more than zero.')
    expect(sentenceOf({ code: 'VALUE_ABSURD', property: 'pH', value: 71, meant: 7.1 })).toBe(
      'A pH of 71: was 7.1 meant?',
    )
  })

  const gates: readonly GateReason[] = [
    { code: 'ORDER', steps: ['a-water', 'a-gum', 'a-oat', 'gone'] },
    { code: 'TOO_HOT', vessel: 'main', limitC: 40, lastC: 47.5, ageMs: 120_000, material: 'Panthenol 75 %' },
    { code: 'TOO_HOT', vessel: 'main', limitC: 40, lastC: 47.5, ageMs: 0 },
    { code: 'TEMPERATURE_OLD', vessel: 'main', limitC: 40, lastC: 39, ageMs: 2_000_000 },
    { code: 'TEMPERATURE_UNKNOWN', vessel: 'main' },
    { code: 'TEMPERATURE_UNKNOWN', vessel: 'oil', limitC: 70 },
    { code: 'NOT_YET_WARM', vessel: 'oil', leastC: 70, lastC: 60 },
    { code: 'TOO_FAR_APART', differenceC: 7, mostC: 5 },
    { code: 'TIMER_RUNNING', leftMs: 61_000 },
    { code: 'TIMER_NOT_STARTED', minutes: 20 },
    { code: 'NO_TARE', vessel: 'main' },
    { code: 'NO_LOT', line: 'squalane' },
    { code: 'LOT_EXPIRED', lot: 'TO-031' },
    { code: 'LOT_QUARANTINED', lot: 'SB-061' },
    { code: 'CUP_EMPTY', vessel: 'slurry' },
    { code: 'CUP_TOO_OLD', vessel: 'cool-cup', ageMs: 7_300_000, mostMinutes: 120 },
    { code: 'DEVIATION_OPEN', deviation: 'x' },
    { code: 'ABOVE_THEORY', aboveUg: 5_000_000 },
    { code: 'SPEED_OUTSIDE', tool: 'propeller', rpm: 900, range: { min: 150, max: 250 } },
    { code: 'ABOVE_MAXIMUM', massUg: 7_600_000, mostUg: 7_500_000 },
    { code: 'OUTSIDE_LIMITS', label: 'pH', value: 6.2, low: 4.9, high: 5.3 },
    { code: 'OUTSIDE_LIMITS', label: 'pH' },
  ]
  test.each(gates)('[A51] a gate ($code) says the rule and what is known of it', (reason) => {
    const gate: Gate = { ...reason, key: reason.code, passable: true }
    const { title, text } = gateWords(gate, openTestBench(lotionHeader()).state, createFormat('.', 'en-GB'))
    expect(isSentence(text), text).toBe(true)
    expect(`${title} ${text}`).not.toMatch(/undefined|NaN|!/)
  })

  const impossible: readonly RemedyRefusal[] = [
    { code: 'VESSEL_TOO_SMALL', neededUg: 850_000_000, capacityUg: 800_000_000 },
    { code: 'STOCK_TOO_SHORT', id: 'squalane', neededUg: 5, stockUg: 4 },
    { code: 'LINE_LOCKED', id: 'squalane', neededUg: 5_000 },
    { code: 'LINE_NOT_IN_FORMULA', id: 'x' },
    { code: 'NO_QS_LINE' },
    { code: 'QS_ALREADY_PAST', id: 'aqua', pastUg: 7_500_000 },
    { code: 'STIRRER_TOO_SMALL', neededUg: 850_000_000, mostUg: 700_000_000 },
  ]
  test.each(impossible)('[A51] a remedy that cannot be ($code) says why', (refusal) => {
    const sentence = whyNot(
      refusal,
      plainWords(() => 'squalane'),
    ).full
    expect(isSentence(sentence), sentence).toBe(true)
  })
})
