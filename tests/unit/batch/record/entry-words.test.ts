import { describe, expect, test } from 'vitest'
import { wordsOf } from '../../../../src/batch/entry-words.ts'
import { demonstrationBatches } from '../../../house/demonstration/files.ts'
import { plan } from '../../../support/stability.ts'
import { entryOf as entry, plainSay as say } from '../../../support/words.ts'

describe('an entry in words', () => {
  test.each([
    [
      entry('tared', { vessel: 'main', tareUg: 312_460_000, standsIn: 'a bar' }),
      'Tared main at 312.46 g, with a bar in it.',
    ],
    [entry('struck', { entry: 'known', reason: 'slip' }), 'Struck out “Weighed 99.8 g of shea”: slip.'],
    [entry('struck', { entry: 'gone', reason: 'slip' }), 'Struck out an entry that is not here: slip.'],
    [entry('discarded', { vessel: 'cup', massUg: 'all', reason: 'wet' }), 'Threw away all of cup: wet.'],
    [
      entry('discarded', { vessel: 'cup', massUg: 400_000, line: 'gum', reason: 'over' }),
      'Took 0.4 g of gum out of cup: over.',
    ],
    [entry('spilled', { vessel: 'oil', massUg: 2_000_000, reason: 'knocked' }), 'Spilled 2 g from oil: knocked.'],
    [entry('timer-acknowledged', { timer: 't', lateMs: 120_000 }), 'Stopped the bell, 2 min late.'],
    [entry('timer-acknowledged', { timer: 't', lateMs: 0 }), 'Stopped the bell.'],
    [entry('person-changed', { person: 'mo', from: 'rk' }), 'Handed over from RK to MO.'],
    [entry('clock-jumped', { byMs: -3_600_000 }), "The tablet's clock moved back by 60 min."],
    [entry('signed', { person: 'jt', meaning: 'checked' }), 'Signed by JT: checked.'],
    [
      entry('stability-planned', plan),
      'Planned stability, Four weeks: 6 jars at 25 °C, 40 °C, Freeze–thaw; to read: pH, rested, Viscosity, rested, Appearance.',
    ],
    [entry('cycle-counted', { condition: 'ft' }), 'Counted one more freeze–thaw cycle (ft).'],
    [entry('parked', { reason: 'overnight' }), 'Put aside: overnight.'],
    [entry('resumed', {}), 'Taken up again.'],
    [entry('abandoned', { reason: 'split' }), 'Given up: split.'],
    [entry('closed', { decision: 'hold', note: 'Thin.' }), 'Closed: hold. Thin.'],
    [entry('pictured', { picture: 'p', caption: 'lumps' }), 'Picture: lumps.'],
    [entry('bath-changed', { vessel: 'main', what: 'ice added' }), 'main: ice added.'],
  ])('%# says what happened', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  test('[E43] an entry of an unknown kind is named, never dropped', () => {
    const event = { ...entry('resumed', {}), kind: 'sung-over' }
    expect(wordsOf(event, say)).toContain('sung-over')
  })

  test('every entry of the demonstration has a sentence with its full stop and without a hole', () => {
    for (const { events } of demonstrationBatches())
      for (const event of events) {
        const words = wordsOf(event, say)
        expect(words, event.kind).not.toMatch(/undefined|NaN|\[object|\.\.$/)
        expect(words.endsWith('.'), words).toBe(true)
      }
  })
})
