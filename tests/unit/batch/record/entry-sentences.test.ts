import { describe, expect, test } from 'vitest'
import { kindOfRemedy } from '../../../../src/batch/entry-phrases.ts'
import { wordsOf } from '../../../../src/batch/entry-words.ts'
import type { Bodies, RemedyKind } from '../../../../src/batch/kinds.ts'
import { lotionHeader } from '../../../support/formulas.ts'
import { entryOf as entry, plainSay as say } from '../../../support/words.ts'

const weighed: Bodies['weighed'] = {
  step: 'b-shea',
  line: 'shea',
  vessel: 'oil',
  netUg: 9_980_000,
  mode: 're-tare',
  readings: [9_980_000],
  targetUg: 10_000_000,
  lowUg: 9_900_000,
  highUg: 10_100_000,
}
const moved = { step: 'b-into-a', from: 'oil', to: 'main', residueUg: 0, rinseUg: 0 }
const filled = { vessel: 'main', massUg: 480_000_000, units: 4 }
const off: Bodies['deviation-noticed'] = {
  deviation: 'd',
  entry: 'e',
  step: 'b-shea',
  line: 'shea',
  direction: 'over',
  byUg: 410_000,
  inCup: false,
}
const chosen: Bodies['remedy-chosen'] = {
  deviation: 'd',
  remedy: 'scale',
  reason: 'a scoop too many',
  totalUg: 520_000_000,
  heldBackUg: 0,
  targets: [],
}

describe('[E41] what an entry says of', () => {
  test.each([
    [entry('opened', lotionHeader()), 'Opened QW-LOT-01-041: Oat barrier body lotion revision 3, 500 g.'],
    [
      entry('preflight-checked', {
        items: [
          { text: 'Bath on', done: true },
          { text: 'Mask', done: false },
          { text: 'Gloves', done: true },
        ],
      }),
      'Looked over the bench: 2 of 3 points done.',
    ],
    [entry('tared', { vessel: 'main', tareUg: 312_460_000 }), 'Tared main at 312.46 g.'],
    [entry('lot-chosen', { line: 'shea', lots: ['SH-1'] }), 'Chose lot SH-1 for shea.'],
    [
      entry('lot-chosen', { line: 'shea', lots: ['SH-1', 'SH-2'], reason: 'the tub is nearly empty' }),
      'Chose lot SH-1, then SH-2 for shea: the tub is nearly empty.',
    ],
    [
      entry('lot-corrected', { step: 'b-shea', entry: 'known', lot: 'SH-2', reason: 'read off the wrong tub' }),
      'Corrected the lot to SH-2 of “Weighed 99.8 g of shea”: read off the wrong tub.',
    ],
    [
      entry('lot-corrected', { step: 'b-shea', entry: 'gone', lot: 'SH-2', reason: 'wrong tub' }),
      'Corrected the lot to SH-2: wrong tub.',
    ],
  ])('the bench and its lots: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  test.each([
    [entry('weighed', weighed), 'Weighed 9.98 g of shea into oil, target 10 g.'],
    [
      entry('weighed', { ...weighed, lot: 'SH-1', checkedBy: 'jt' }),
      'Weighed 9.98 g of shea, lot SH-1 into oil, target 10 g, checked by JT.',
    ],
    [
      entry('adjusted', { step: 'adjust-ph', line: 'lactic', vessel: 'main', netUg: 800_000, lot: 'LA-1' }),
      'Added 0.8 g of lactic, lot LA-1 to main.',
    ],
    [
      entry('made-up', { step: 'make-up', vessel: 'main', line: 'aqua', netUg: 6_000_000 }),
      'Made up with 6 g of aqua.',
    ],
    [
      entry('made-up', { step: 'make-up', vessel: 'main', line: 'aqua', netUg: 6_000_000, grossUg: 806_000_000 }),
      'Made up with 6 g of aqua, at 806 g gross.',
    ],
    [
      entry('unplanned-added', { component: 'u', name: 'Oat', vessel: 'main', netUg: 350_000, reason: 'softer' }),
      'Added 0.35 g of Oat, not in the plan: softer.',
    ],
    [entry('charged', moved), 'oil into main.'],
    [
      entry('transferred', { ...moved, residueUg: 400_000, rinseUg: 2_000_000 }),
      'oil into main, rinsed with 2 g, 0.4 g left behind.',
    ],
    [
      entry('discarded', { vessel: 'cup', massUg: 400_000, reason: 'poured too fast' }),
      'Took 0.4 g out of cup: poured too fast.',
    ],
    [
      entry('evaporated', { vessel: 'main', massUg: 3_000_000, line: 'aqua', seenBy: 'balance' }),
      '3 g of aqua evaporated from main (balance).',
    ],
    [
      entry('sampled', { vessel: 'main', massUg: 5_000_000, jars: 0, purpose: 'the pH' }),
      'Took 5 g out to read the pH.',
    ],
    [
      entry('sampled', { vessel: 'main', massUg: 100_000_000, jars: 1, purpose: 'rested checks' }),
      'Took 100 g as samples, 1 jar: rested checks.',
    ],
    [
      entry('sampled', { vessel: 'main', massUg: 300_000_000, jars: 3, purpose: 'rested checks' }),
      'Took 300 g as samples, 3 jars: rested checks.',
    ],
    [entry('filled', filled), 'Filled 480 g into 4 units.'],
    [
      entry('filled', { ...filled, units: 1, grossAfterUg: 314_000_000 }),
      'Filled 480 g into 1 unit; the vessel read 314 g after.',
    ],
    [
      entry('filled', { ...filled, grossBeforeUg: 794_000_000, grossAfterUg: 314_000_000 }),
      'Filled 480 g into 4 units; the vessel read 794 g before and 314 g after.',
    ],
  ])('mass that came, moved and went: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  test.each([
    [entry('step-started', { step: 'b-melt' }), 'Started: b-melt.'],
    [entry('step-finished', { step: 'b-melt' }), 'Finished: b-melt.'],
    [
      entry('step-finished', { step: 'b-mix', toolRpm: 4000, toolMm: 25, saw: 'glossy', checkedBy: 'jt' }),
      'Finished: b-mix, at 4000 rpm (25 mm across), glossy, checked by JT.',
    ],
    [entry('step-finished', { step: 'b-mix', toolRpm: 4000 }), 'Finished: b-mix, at 4000 rpm.'],
    [entry('step-skipped', { step: 'b-mix', reason: 'the tool is broken' }), 'Skipped: b-mix. The tool is broken.'],
    [
      entry('gate-passed', { step: 'c-in', gate: 'TOO_HOT', detail: '42 °C', reason: 'It falls fast.' }),
      'Went on with c-in all the same (42 °C): It falls fast.',
    ],
    [entry('temperature-read', { vessel: 'oil', temperatureC: 74.5 }), 'oil read 74.5 °C.'],
    [
      entry('timer-started', { timer: 't', label: 'Hydrate', startedAtMs: 60_000, deadlineAtMs: 1_260_000 }),
      'Started the timer of Hydrate: 20 min.',
    ],
    [entry('clock-jumped', { byMs: 120_000 }), "The tablet's clock moved forward by 2 min."],
    [
      entry('healed', { code: 'JOURNAL', entries: 7, streams: 2 }),
      'One copy of the data was mended from the other: 7 entries.',
    ],
  ])('the course of the steps: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  test.each([
    [entry('deviation-noticed', off), 'shea is 0.41 g over.'],
    [
      entry('deviation-noticed', { ...off, direction: 'under', inCup: true }),
      'shea is 0.41 g under, still in its cup.',
    ],
    [entry('deviation-noticed', { ...off, cause: 'forgotten' }), '0.41 g of shea is missing: its step has passed.'],
    [entry('deviation-noticed', { ...off, cause: 'foreign' }), '0.41 g of shea is in and not in the formula.'],
    [entry('deviation-noticed', { ...off, cause: 'loss' }), '0.41 g of shea is gone, with what stood with it.'],
    [entry('deviation-noticed', { ...off, cause: 'lot' }), 'shea came from a lot that was not to be used.'],
    [
      entry('deviation-noticed', { ...off, cause: 'lot', inCup: true }),
      'shea came from a lot that was not to be used, still in its cup.',
    ],
    [entry('remedy-chosen', chosen), 'Chose to scale the rest: 520 g in all. A scoop too many.'],
    [
      entry('remedy-chosen', {
        ...chosen,
        targets: [
          { step: 'a-water', line: 'aqua', fromUg: 1, toUg: 2 },
          { step: 'a-gum', line: 'gum', fromUg: 1, toUg: 2 },
        ],
      }),
      'Chose to scale the rest: 520 g in all, 2 targets changed. A scoop too many.',
    ],
  ])('what was off and the way on: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  test.each<[RemedyKind, string]>([
    ['accept', 'accept it as it is'],
    ['scale', 'scale the rest'],
    ['smaller', 'make less in the same ratio'],
    ['extra', 'make a little more'],
    ['qs', 'let q.s. give way'],
    ['departure', 'stay as near to the formula as can be'],
    ['cost', 'spend the least'],
    ['discard', 'discard and weigh again'],
  ])('the way on %s', (remedy, words) => {
    expect(kindOfRemedy(remedy)).toBe(words)
    expect(wordsOf(entry('remedy-chosen', { ...chosen, remedy }), say)).toBe(
      `Chose to ${words}: 520 g in all. A scoop too many.`,
    )
  })
})
