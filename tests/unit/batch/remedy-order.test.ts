import { describe, expect, test } from 'vitest'
import type { RemedyKind } from '../../../src/batch/kinds'
import type { RemedyOffer } from '../../../src/batch/remedy-offer'
import { inMerit } from '../../../src/batch/remedy-order'

const offer = (remedy: RemedyKind, more: Partial<RemedyOffer> = {}): RemedyOffer => ({
  remedy,
  feasible: true,
  totalUg: 500,
  endsUg: 500,
  heldBackUg: 0,
  targets: [],
  rows: [],
  breaks: 0,
  binds: [],
  qsAddedUg: 0,
  finalUg: [],
  reason: 'as-good',
  ...more,
  merits: { feasible: true, breaks: more.breaks ?? 0, departure: 0, addedUg: 0, cost: 1, ...more.merits },
})

const to = (step: string, toUg: number) => ({ step, line: step, fromUg: 1, toUg })
const order = (...offers: readonly RemedyOffer[]) => inMerit(offers).map(({ remedy }) => remedy)
const merits = (addedUg: number) => ({ feasible: true, breaks: 0, departure: 0, addedUg, cost: 1 })

describe('[R21] ways on in order of merit', () => {
  test('throwing away comes after all that break no more, leaving it after that, what cannot be gone last', () => {
    expect(
      order(
        offer('accept', { totalUg: 1 }),
        offer('discard', { totalUg: 2 }),
        offer('smaller', { totalUg: 3, feasible: false }),
        offer('scale', { totalUg: 4, merits: merits(20) }),
        offer('qs', { totalUg: 5, merits: merits(10) }),
      ),
    ).toEqual(['qs', 'scale', 'discard', 'accept', 'smaller'])
  })

  test('and before those that break more', () => {
    const all = inMerit([
      offer('scale', { totalUg: 4, breaks: 1 }),
      offer('extra', { totalUg: 5, breaks: 3 }),
      offer('accept', { breaks: 2 }),
      offer('discard', { breaks: 0 }),
    ])
    expect(all.map(({ remedy }) => remedy)).toEqual(['discard', 'scale', 'accept', 'extra'])
    expect(all[0]?.reason).toBe('inside-limits')
    expect(all[2]?.reason).toBe('inside-limits')
  })
})

describe('[R33] equal ways on', () => {
  test('are offered once, in whatever order their targets stand; leaving it and throwing away always', () => {
    const targets = [to('a', 5), to('b', 6)]
    expect(
      order(
        offer('scale', { targets }),
        offer('extra', { targets: [...targets].reverse() }),
        offer('accept', { targets }),
      ),
    ).toEqual(['scale', 'accept'])
    expect(order(offer('scale', { targets }), offer('extra', { targets: [to('a', 5), to('b', 7)] }))).toHaveLength(2)
    expect(order(offer('scale'), offer('extra', { totalUg: 501 }))).toHaveLength(2)
    expect(order(offer('scale'), offer('extra', { heldBackUg: 1 }))).toHaveLength(2)
    expect(order(offer('accept'), offer('discard'))).toEqual(['discard', 'accept'])
  })

  test('departing is said to be impossible only where nothing else says the same', () => {
    const not = (remedy: RemedyKind, id: string) =>
      offer(remedy, { feasible: false, why: { code: 'LINE_NOT_IN_FORMULA', id } })
    const other = offer('scale', { feasible: false, why: { code: 'RANGE_CONTRADICTORY', id: 'oil', low: 1, high: 0 } })
    expect(order(not('departure', 'oil'), not('scale', 'wax'))).toEqual(['scale'])
    expect(order(not('departure', 'oil'), other)).toEqual(['departure', 'scale'])
    expect(order(not('departure', 'oil'), offer('scale'))).toEqual(['scale', 'departure'])
    expect(order(not('cost', 'oil'), not('scale', 'oil'))).toEqual(['cost', 'scale'])
  })
})
