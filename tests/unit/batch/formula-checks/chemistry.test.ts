import { describe, expect, it } from 'vitest'
import { checksFor, codesFor, found, material, pH, qs, revision, share } from '../../../support/formula-maker'

const acid = material('benzoate', {
  inci: [{ name: 'Sodium Benzoate', fraction: 1 }],
  function: 'preservative',
  useLevel: { min: 0.003, max: 0.005 },
})
const asking = (low: number, high: number) => ({ specification: [pH(low, high)] })

describe('preservation and pH', () => {
  it('[F6] water without a preservative is said; a formula without water needs none', () => {
    expect(found(checksFor(revision([qs()]), []), 'PRESERVATIVE_NONE')).toMatchObject({
      severity: 'warn',
      figure: { value: 1 },
    })
    expect(codesFor(revision([share('oil', 100)]), [material('oil')])).not.toContain('PRESERVATIVE_NONE')
    expect(codesFor(revision([qs(), share('benzoate', 0.4)], asking(4, 5)), [acid])).toEqual([])
  })

  it('[F6] a preservative under its level is as wrong as one over it', () => {
    expect(codesFor(revision([qs(), share('benzoate', 0.2)], asking(4, 5)), [acid])).toEqual(['PRESERVATIVE_WEAK'])
    expect(codesFor(revision([qs(), share('benzoate', 0.55)], asking(4, 5)), [acid])).toEqual(['PRESERVATIVE_STRONG'])
  })

  it('[F7] the EU maximum counts all salts as their acid, by how the product is used', () => {
    const strong = { ...acid, useLevel: { min: 0.003, max: 0.03 } }
    // 0.60 % of the salt is 0.508 % of the acid.
    const over = checksFor(revision([qs(), share('benzoate', 0.6)], asking(4, 5)), [strong])
    expect(found(over, 'PRESERVATIVE_ABOVE_LAW')).toMatchObject({ limit: { max: 0.005 }, source: { kind: 'standard' } })
    expect(found(over, 'PRESERVATIVE_ABOVE_LAW').figure?.value).toBeCloseTo(0.006 * (122.12 / 144.1), 9)
    expect(codesFor(revision([qs(), share('benzoate', 0.58)], asking(4, 5)), [strong])).toEqual([])
    expect(
      codesFor(revision([qs(), share('benzoate', 0.6)], asking(4, 5)), [strong], { contact: 'rinse-off' }),
    ).toEqual([])
  })

  it('[F8] the pH asked for is held against the preservative, by its own window or the textbook', () => {
    const apart = checksFor(revision([qs(), share('benzoate', 0.4)], asking(6, 7)), [acid])
    expect(found(apart, 'PRESERVATIVE_PH_OUT')).toMatchObject({
      figure: { value: 7 },
      limit: { max: 5.5 },
      source: { kind: 'textbook' },
    })
    const partly = checksFor(revision([qs(), share('benzoate', 0.4)], asking(5.2, 5.8)), [acid])
    expect(found(partly, 'PRESERVATIVE_PH_PARTLY')).toMatchObject({ severity: 'warn', figure: { value: 5.8 } })
    const own = { ...acid, phWindow: { min: 3, max: 6 } }
    expect(codesFor(revision([qs(), share('benzoate', 0.4)], asking(5.2, 5.8)), [own])).toEqual([])
    expect(codesFor(revision([qs(), share('benzoate', 0.4)]), [acid])).toEqual(['PH_NOT_STATED'])
  })

  it('[F9] the pH asked for is held against the window of every active', () => {
    const active = material('active', { phWindow: { min: 4, max: 6 } })
    const codes = (low: number, high: number) =>
      codesFor(revision([qs(), share('active', 1), share('benzoate', 0.4)], asking(low, high)), [
        active,
        { ...acid, phWindow: { min: 1, max: 14 } },
      ])
    expect(codes(4, 6)).toEqual([])
    expect(codes(5.5, 6.5)).toEqual(['PH_PARTLY'])
    expect(codes(6.5, 7)).toEqual(['PH_OUT'])
    expect(codes(2, 3.5)).toEqual(['PH_OUT'])
  })
})

const anionic = material('sarcosinate', {
  activeMatter: { fraction: 0.3, class: 'anionic' },
  function: 'anionic surfactant',
})
const cationic = material('quat', {
  inci: [
    { name: 'Cetrimonium Chloride', fraction: 0.3 },
    { name: 'Aqua', fraction: 0.7 },
  ],
})
const polymer = material('guar', { activeMatter: { fraction: 0.9, class: 'cationic polymer' } })

describe('charges and thickeners', () => {
  it('[F10] active matter is summed by class and in all, and what is not known is named', () => {
    const checks = checksFor(revision([qs(), share('sarcosinate', 20), share('betaine', 10), share('other', 5)]), [
      anionic,
      material('betaine', { activeMatter: { fraction: 0.3, class: 'amphoteric' } }),
      material('other', { function: 'surfactant' }),
    ])
    expect(found(checks, 'ACTIVE_MATTER')).toMatchObject({
      figure: { value: 0.09 },
      byClass: [
        { class: 'anionic', share: 0.06 },
        { class: 'amphoteric', share: 0.03 },
      ],
    })
    expect(found(checks, 'ACTIVE_UNKNOWN')).toMatchObject({ names: ['other'] })
  })

  it('[F11] anionic with cationic surfactant is a warning, with cationic polymer a note', () => {
    const warn = checksFor(revision([qs(), share('sarcosinate', 20), share('quat', 2)]), [anionic, cationic])
    expect(found(warn, 'ANIONIC_WITH_CATIONIC')).toMatchObject({ severity: 'warn', line: 'quat' })
    const note = checksFor(revision([qs(), share('sarcosinate', 20), share('guar', 0.3)]), [anionic, polymer])
    expect(found(note, 'ANIONIC_WITH_CATIONIC_POLYMER')).toMatchObject({ severity: 'note', figure: { value: 0.0027 } })
    expect(codesFor(revision([qs(), share('sarcosinate', 20)]), [anionic])).not.toContain('ANIONIC_WITH_CATIONIC')
    expect(codesFor(revision([qs(), share('guar', 0.3), share('quat', 2)]), [polymer, cationic])).not.toContain(
      'ANIONIC_WITH_CATIONIC',
    )
  })

  it('[F11] a carbomer or anionic gum with something cationic is a warning', () => {
    const carbomer = material('carbomer', { inci: [{ name: 'Carbomer', fraction: 1 }] })
    expect(codesFor(revision([qs(), share('carbomer', 0.5), share('quat', 2)]), [carbomer, cationic])).toContain(
      'ANIONIC_THICKENER_WITH_CATIONIC',
    )
    const gum = material('hec', { inci: [{ name: 'Hydroxyethylcellulose', fraction: 1 }] })
    expect(codesFor(revision([qs(), share('hec', 0.5), share('quat', 2)]), [gum, cationic])).not.toContain(
      'ANIONIC_THICKENER_WITH_CATIONIC',
    )
  })
})
