import { describe, expect, it } from 'vitest'
import type { Step } from '../../../../src/batch/step'
import {
  checksFor,
  codesFor,
  fineBalance,
  found,
  material,
  qs,
  revision,
  share,
  step,
  weigh,
} from '../../../support/formula-maker'

const heat = (targetC: number, vessel = 'main'): Step =>
  step(`heat-${vessel}-${targetC}`, { kind: 'heat', targetC }, vessel)
const cool = (targetC: number): Step => step(`cool-${targetC}`, { kind: 'cool', targetC, by: 'air' })
const combine = (from: string): Step => step(`combine-${from}`, { kind: 'combine', from })
const charge = (cup: string): Step => step(`charge-${cup}`, { kind: 'charge', cup, rate: 'stream' })
const hydrate: Step = step('hydrate', { kind: 'hydrate', minutes: 20, shear: 'low' })

const tender = material('tender', { maxTemperatureC: 40 })
const oil = material('oil', { maxTemperatureC: 90 })
const base = [qs(), share('oil', 40), share('tender', 1)]
const said = (...procedure: readonly Step[]) =>
  checksFor(revision(base, { procedure }), [tender, oil]).filter(({ limit }) => limit?.unit === 'celsius')

describe('temperature along the procedure', () => {
  it('[F12] a line that goes in above what it bears is named with the step and both figures', () => {
    const hot = said(weigh('water'), heat(75), cool(60), weigh('tender'))
    expect(hot).toMatchObject([
      { code: 'ENTERS_TOO_HOT', line: 'tender', step: 'weigh-tender', figure: { value: 60 }, limit: { max: 40 } },
    ])
    expect(said(weigh('water'), heat(75), cool(40), weigh('tender'))).toEqual([])
    expect(said(weigh('water'), weigh('tender'))).toEqual([])
    expect(said(weigh('tender', 'cup'), weigh('water'), heat(75), charge('cup'))).toMatchObject([
      { code: 'NEVER_COOLED', step: 'charge-cup' },
    ])
  })

  it('[F12] heat with nothing that cools before a tender line goes in is said as that', () => {
    expect(said(weigh('water'), heat(75), weigh('tender'))).toMatchObject([
      { code: 'NEVER_COOLED', figure: { value: 75 } },
    ])
  })

  it('[F13] a line that is in the vessel when it is heated past what it bears is named, once', () => {
    expect(said(weigh('water'), weigh('tender'), heat(75), heat(80))).toMatchObject([
      { code: 'HEATED_ABOVE', step: 'heat-main-75', figure: { value: 75 } },
    ])
  })

  it('[F14] two vessels combined end at their mean by mass, and what is in the cooler one feels it', () => {
    // 60 % at 25 °C, the tender line in it, with 40 % of oil at 80 °C.
    const mixed = said(weigh('water'), weigh('tender'), weigh('oil', 'side'), heat(80, 'side'), combine('side'))
    expect(mixed).toMatchObject([{ code: 'HEATED_ABOVE', step: 'combine-side', figure: { value: 47 } }])
    const after = said(
      weigh('water'),
      weigh('oil', 'side'),
      heat(80, 'side'),
      combine('side'),
      cool(40),
      weigh('tender'),
    )
    expect(after).toEqual([])
  })
})

const gum = material('gum', { inci: [{ name: 'Xanthan Gum', fraction: 1 }] })
const carbomer = material('carbomer', { inci: [{ name: 'Carbomer', fraction: 1 }] })
const pvp = material('pvp', { inci: [{ name: 'PVP', fraction: 1 }] })
const soda = material('soda', { inci: [{ name: 'Sodium Hydroxide', fraction: 0.18 }] })
const salt = material('salt', { inci: [{ name: 'Sodium Chloride', fraction: 1 }] })

describe('gums and carbomers', () => {
  const codes = (lines: ReturnType<typeof share>[], procedure: Step[]) =>
    codesFor(revision([qs(), ...lines], { procedure }), [gum, carbomer, pvp, soda, salt])

  it('[F15] a gum that no step hydrates is named; one that came by a cup counts where it is', () => {
    expect(codes([share('gum', 0.4)], [weigh('water'), weigh('gum')])).toContain('GUM_NOT_HYDRATED')
    expect(codes([share('gum', 0.4)], [weigh('water'), hydrate, weigh('gum')])).toContain('GUM_NOT_HYDRATED')
    expect(codes([share('gum', 0.4)], [weigh('gum', 'cup'), weigh('water'), charge('cup'), hydrate])).not.toContain(
      'GUM_NOT_HYDRATED',
    )
  })

  it('[F16] a carbomer wants a base, and its base before PVP', () => {
    const lines = [share('carbomer', 0.5), share('pvp', 3), share('soda', 1)]
    expect(codes([share('carbomer', 0.5)], [weigh('water'), weigh('carbomer'), hydrate])).toContain(
      'CARBOMER_NOT_NEUTRALISED',
    )
    const early = [weigh('water'), weigh('carbomer'), hydrate, weigh('pvp'), weigh('soda')]
    expect(codes(lines, early)).toContain('CARBOMER_BEFORE_PVP')
    const late = [weigh('water'), weigh('carbomer'), hydrate, weigh('soda'), weigh('pvp')]
    expect(codes(lines, late)).not.toContain('CARBOMER_BEFORE_PVP')
    expect(codes(lines, late)).not.toContain('CARBOMER_NOT_NEUTRALISED')
  })

  it('[F17] salts beside a gum or a carbomer are told from where they thin', () => {
    const steps = [weigh('water'), weigh('carbomer'), weigh('gum'), weigh('salt'), hydrate]
    expect(codes([share('carbomer', 0.5), share('salt', 0.05)], steps)).toContain('THICKENER_WITH_SALT')
    expect(codes([share('gum', 0.5), share('salt', 0.4)], steps)).not.toContain('THICKENER_WITH_SALT')
    expect(codes([share('gum', 0.5), share('salt', 0.5)], steps)).toContain('THICKENER_WITH_SALT')
  })
})

describe('weighing, emulsion, cost, safety', () => {
  it('[F18] a line under the smallest reliable mass of the best balance is named, at the size asked about', () => {
    const tiny = checksFor(revision([qs(), share('oil', 0.03)]), [oat()])
    expect(found(tiny, 'TOO_SMALL_TO_WEIGH')).toMatchObject({
      figure: { value: 150_000 },
      limit: { min: 200_000, unit: 'mass' },
      balance: 'Balance 1',
    })
    expect(codesFor(revision([qs(), share('oil', 0.03)]), [oat()], { sizeUg: 700_000_000 })).not.toContain(
      'TOO_SMALL_TO_WEIGH',
    )
    const wide = share('oil', 0.03, { tolerance: { relative: 0.02 } })
    expect(codesFor(revision([qs(), wide]), [oat()])).not.toContain('TOO_SMALL_TO_WEIGH')
    const heavy = { ...fineBalance, capacityUg: 1_000_000 }
    expect(codesFor(revision([qs(), share('oil', 2)]), [oat()], { balances: [heavy] })).toContain('TOO_MUCH_TO_WEIGH')
  })

  it('[F19] the oil phase and the emulsifier are compared by their means, over what is known', () => {
    const oils = [
      material('oil', { function: 'emollient', requiredHlb: 11 }),
      material('wax', { function: 'consistency wax', requiredHlb: 15 }),
      material('butter', { function: 'emollient' }),
      material('em-low', { function: 'emulsifier', hlb: 4 }),
      material('em-high', { function: 'emulsifier', hlb: 16 }),
    ]
    const checks = checksFor(
      revision([qs(), share('oil', 12), share('wax', 4), share('butter', 4), share('em-low', 1), share('em-high', 3)]),
      oils,
    )
    // (12·11 + 4·15) ÷ 16 = 12; (1·4 + 3·16) ÷ 4 = 13.
    expect(found(checks, 'HLB_GUIDE')).toMatchObject({ figure: { value: 13 }, limit: { min: 11, max: 13 }, known: 0.8 })
    expect(found(checks, 'HLB_UNKNOWN')).toMatchObject({ names: ['butter'] })
    const far = checksFor(revision([qs(), share('oil', 12), share('em-low', 4)]), oils)
    expect(found(far, 'HLB_APART')).toMatchObject({ figure: { value: 4 }, severity: 'note' })
  })

  it('[F20] cost is told per kg, per batch and per unit, and how many lines have no price', () => {
    const priced = material('priced', { costPerKg: 20 })
    const fill = step('fill', { kind: 'fill', units: 4, eachUg: 100_000_000 })
    const checks = checksFor(revision([qs(), share('priced', 10)], { procedure: [fill] }), [priced])
    expect(found(checks, 'COST')).toMatchObject({ figure: { value: 2 }, perBatch: 1, perUnit: 0.2, unpriced: 1 })
  })

  it('[F21] a hazard is told with what to wear; an allergen by what is known of it and how the product is used', () => {
    const scent = material('scent', {
      allergens: ['Linalool', 'Limonene'],
      allergenParts: [{ name: 'Linalool', fraction: 0.02 }],
      hazards: { caution: 'Neat: gloves on', kind: 'sensitiser', statements: [], wear: ['gloves'] },
    })
    const of = (percent: number, contact: 'leave-on' | 'rinse-off') =>
      checksFor(revision([qs(), share('scent', percent)]), [scent], { contact })
    expect(found(of(0.3, 'leave-on'), 'HAZARD')).toMatchObject({ wear: ['gloves'] })
    expect(found(of(0.3, 'leave-on'), 'ALLERGENS_NAMED')).toMatchObject({
      figure: { value: 0.003 * 0.02 },
      limit: { max: 0.00001 },
    })
    expect(of(0.3, 'rinse-off').map(({ code }) => code)).not.toContain('ALLERGENS_NAMED')
    expect(found(of(0.3, 'rinse-off'), 'ALLERGENS_UNKNOWN')).toMatchObject({ allergens: ['Limonene'] })
    expect(of(0.009, 'rinse-off').map(({ code }) => code)).not.toContain('ALLERGENS_UNKNOWN')
  })
})

function oat() {
  return material('oil')
}
