import { describe, expect, test } from 'vitest'
import {
  addedInAll,
  contentsOf,
  inSink,
  type Ledger,
  type Movement,
  massIn,
  openLedger,
  post,
} from '../../../src/trade/ledger'
import { copyLedger } from '../../../src/trade/ledger-copy'
import { addedOf, heldInAll, sinkContents, vesselsOf } from '../../../src/trade/ledger-sums'

const add = (to: string, component: string, massUg: number): Movement => ({ kind: 'add', to, component, massUg })

function ledgerWith(...movements: Movement[]): Ledger {
  const ledger = openLedger()
  for (const movement of movements) expect(post(ledger, movement).ok).toBe(true)
  return ledger
}

const mixed = (): Ledger => ledgerWith(add('cup', 'water', 70), add('cup', 'gum', 20), add('cup', 'salt', 10))

describe('the ledger of mass', () => {
  test('an addition stands in its vessel and in what was added', () => {
    const ledger = ledgerWith(add('beaker', 'water', 100), add('beaker', 'water', 50), add('cup', 'gum', 7))
    expect([...contentsOf(ledger, 'beaker')]).toEqual([['water', 150]])
    expect([massIn(ledger, 'beaker'), massIn(ledger, 'cup'), massIn(ledger, 'unknown')]).toEqual([150, 7, 0])
    expect([addedOf(ledger, 'water'), addedOf(ledger, 'salt'), addedInAll(ledger), heldInAll(ledger)]).toEqual([
      150, 0, 157, 157,
    ])
    expect(vesselsOf(ledger)).toEqual(['beaker', 'cup'])
  })

  test('[L2] a transfer moves everything but the residue, in proportion, and the residue is left behind', () => {
    const ledger = mixed()
    expect(post(ledger, { kind: 'transfer', from: 'cup', to: 'beaker', residueUg: 10 })).toEqual({
      ok: true,
      value: 90,
    })
    expect(Object.fromEntries(contentsOf(ledger, 'beaker'))).toEqual({ water: 63, gum: 18, salt: 9 })
    expect(Object.fromEntries(sinkContents(ledger, 'left-behind'))).toEqual({ water: 7, gum: 2, salt: 1 })
    expect([massIn(ledger, 'cup'), contentsOf(ledger, 'cup').size]).toEqual([0, 0])
  })

  test('a transfer of an empty cup moves nothing', () => {
    expect(post(openLedger(), { kind: 'transfer', from: 'cup', to: 'beaker', residueUg: 0 })).toEqual({
      ok: true,
      value: 0,
    })
  })

  test('[L3] evaporation takes one component alone', () => {
    const ledger = mixed()
    expect(post(ledger, { kind: 'evaporate', from: 'cup', component: 'water', massUg: 5 })).toMatchObject({ value: 5 })
    expect(Object.fromEntries(contentsOf(ledger, 'cup'))).toEqual({ water: 65, gum: 20, salt: 10 })
    expect(inSink(ledger, 'evaporated')).toBe(5)
  })

  test('a sample takes every component in proportion; what is taken out of a cup is one component', () => {
    const ledger = mixed()
    post(ledger, { kind: 'remove', from: 'cup', sink: 'sampled', massUg: 10 })
    post(ledger, { kind: 'remove', from: 'cup', sink: 'discarded', massUg: 8, component: 'gum' })
    expect(Object.fromEntries(contentsOf(ledger, 'cup'))).toEqual({ water: 63, gum: 10, salt: 9 })
    expect([inSink(ledger, 'sampled'), inSink(ledger, 'discarded'), inSink(ledger, 'sampled', 'discarded')]).toEqual([
      10, 8, 18,
    ])
  })

  test('all means all that is there, of the vessel or of one component', () => {
    const ledger = mixed()
    expect(
      post(ledger, { kind: 'remove', from: 'cup', sink: 'spilled', massUg: 'all', component: 'salt' }),
    ).toMatchObject({ value: 10 })
    expect(post(ledger, { kind: 'remove', from: 'cup', sink: 'filled', massUg: 'all' })).toMatchObject({ value: 90 })
    expect(heldInAll(ledger)).toBe(0)
  })

  test.each<[string, Movement, unknown]>([
    ['nothing', add('cup', 'water', 0), { code: 'MASS_NOT_POSITIVE' }],
    ['less than nothing', add('cup', 'water', -1), { code: 'MASS_NOT_POSITIVE' }],
    ['a part of a microgram', add('cup', 'water', 0.5), { code: 'MASS_NOT_WHOLE' }],
    ['what is not a number', add('cup', 'water', Number.NaN), { code: 'MASS_NOT_WHOLE' }],
    [
      'a residue below nothing',
      { kind: 'transfer', from: 'cup', to: 'beaker', residueUg: -1 },
      { code: 'MASS_NOT_POSITIVE' },
    ],
    [
      'a residue above what was there',
      { kind: 'transfer', from: 'cup', to: 'beaker', residueUg: 101 },
      { code: 'MORE_THAN_HELD', askedUg: 101, heldUg: 100 },
    ],
    ['a transfer into itself', { kind: 'transfer', from: 'cup', to: 'cup', residueUg: 0 }, { code: 'SAME_VESSEL' }],
    [
      'more water gone than there was',
      { kind: 'evaporate', from: 'cup', component: 'water', massUg: 71 },
      { code: 'MORE_THAN_HELD', askedUg: 71, heldUg: 70 },
    ],
    [
      'a sample above what is there',
      { kind: 'remove', from: 'cup', sink: 'sampled', massUg: 101 },
      { code: 'MORE_THAN_HELD', askedUg: 101, heldUg: 100 },
    ],
    [
      'a component that is not there',
      { kind: 'remove', from: 'cup', sink: 'discarded', massUg: 1, component: 'wax' },
      { code: 'MORE_THAN_HELD', askedUg: 1, heldUg: 0 },
    ],
    [
      'a sample from an unknown vessel',
      { kind: 'remove', from: 'jar', sink: 'sampled', massUg: 1 },
      { code: 'MORE_THAN_HELD', askedUg: 1, heldUg: 0 },
    ],
  ])('[L5] %s is refused and changes nothing', (_, movement, refusal) => {
    const ledger = mixed()
    const before = copyLedger(ledger)
    expect(post(ledger, movement)).toEqual({ ok: false, refusal })
    expect(ledger).toEqual(before)
  })

  test('[L6] a copy goes its own way, and contents once read stay as they were', () => {
    const ledger = mixed()
    const copy = copyLedger(ledger)
    const contents = contentsOf(ledger, 'cup')
    post(ledger, add('cup', 'water', 30))
    expect([massIn(ledger, 'cup'), massIn(copy, 'cup'), contents.get('water')]).toEqual([130, 100, 70])
  })
})
