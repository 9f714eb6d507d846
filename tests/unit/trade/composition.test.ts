import { describe, expect, test } from 'vitest'
import { compositionAsMade, massBalanceReading, reconcile } from '../../../src/trade/composition'
import { type Ledger, type Movement, openLedger, post } from '../../../src/trade/ledger'
import { copyLedger } from '../../../src/trade/ledger-copy'

function ledgerWith(...movements: Movement[]): Ledger {
  const ledger = openLedger()
  for (const movement of movements) expect(post(ledger, movement).ok).toBe(true)
  return ledger
}

const batch = (...later: Movement[]): Ledger =>
  ledgerWith(
    { kind: 'add', to: 'beaker', component: 'water', massUg: 80 },
    { kind: 'add', to: 'beaker', component: 'oil', massUg: 20 },
    ...later,
  )

describe('composition as made', () => {
  test('is the fractions of what stands in the vessels named', () => {
    const ledger = batch({ kind: 'add', to: 'cup', component: 'gum', massUg: 100 })
    expect(Object.fromEntries(compositionAsMade(ledger, ['beaker']))).toEqual({ water: 0.8, oil: 0.2 })
    expect(Object.fromEntries(compositionAsMade(ledger))).toEqual({ water: 0.4, oil: 0.1, gum: 0.5 })
  })

  test('[L7] what was filled counts, what was lost does not', () => {
    const ledger = batch(
      { kind: 'evaporate', from: 'beaker', component: 'water', massUg: 40 },
      { kind: 'remove', from: 'beaker', sink: 'filled', massUg: 'all' },
    )
    expect(Object.fromEntries(compositionAsMade(ledger))).toEqual({ water: 40 / 60, oil: 20 / 60 })
    expect(compositionAsMade(ledger, ['beaker']).size).toBe(0)
  })
})

describe('reconciliation', () => {
  test('[L8] everything that was put in is found again', () => {
    const sums = reconcile(
      batch(
        { kind: 'evaporate', from: 'beaker', component: 'water', massUg: 10 },
        { kind: 'remove', from: 'beaker', sink: 'sampled', massUg: 5 },
        { kind: 'remove', from: 'beaker', sink: 'spilled', massUg: 3 },
        { kind: 'remove', from: 'beaker', sink: 'discarded', massUg: 2 },
        { kind: 'transfer', from: 'beaker', to: 'jar', residueUg: 4 },
        { kind: 'remove', from: 'jar', sink: 'filled', massUg: 60 },
      ),
      110,
    )
    expect(sums).toEqual({
      theoreticalUg: 110,
      addedUg: 100,
      inVesselsUg: 16,
      filledUg: 60,
      sampledUg: 5,
      evaporatedUg: 10,
      leftBehindUg: 4,
      spilledUg: 3,
      discardedUg: 2,
      shortUg: 34,
      residueUg: 4,
      unexplainedUg: 16,
      outFraction: 65 / 110,
      yieldFraction: 0.76,
      yieldOfTheoretical: 76 / 110,
    })
  })

  test('before the first addition there is no yield', () => {
    expect(reconcile(openLedger(), 100)).toMatchObject({ addedUg: 0, yieldFraction: 0, yieldOfTheoretical: 0 })
  })
})

describe('a vessel on the balance', () => {
  const read = (grossUg: number, component = 'water') =>
    massBalanceReading(batch(), 'beaker', { grossUg, tareUg: 50, uncertaintyUg: 2, component })

  test('[L9] a difference within the uncertainty is nothing', () => {
    expect([148, 150, 152].map((grossUg) => read(grossUg).status)).toEqual(['nothing', 'nothing', 'nothing'])
    expect(read(148)).toMatchObject({ differenceUg: 2, makeUpUg: 0, possible: true })
  })

  test('[L9] a loss is made up, unless the component holds less', () => {
    expect(read(130)).toEqual({
      theoreticalUg: 100,
      netUg: 80,
      differenceUg: 20,
      status: 'loss',
      makeUpUg: 20,
      possible: true,
    })
    expect(read(129, 'oil').possible).toBe(false)
    expect(read(130, 'wax').possible).toBe(false)
  })

  test('[L9] a gain corrects nothing', () => {
    expect(read(153)).toMatchObject({ differenceUg: -3, status: 'gain', makeUpUg: 0, possible: true })
  })

  test('a reading changes nothing in the ledger', () => {
    const ledger = batch()
    const before = copyLedger(ledger)
    massBalanceReading(ledger, 'beaker', { grossUg: 120, tareUg: 50, uncertaintyUg: 2, component: 'water' })
    expect(ledger).toEqual(before)
  })
})
