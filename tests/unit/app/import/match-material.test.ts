import { describe, expect, it } from 'vitest'
import { indexOf, matchMaterial } from '../../../../src/app/import/match-material'
import { demonstrationCatalogue } from '../../../house/demonstration/catalogue'

const materials = indexOf(demonstrationCatalogue.materials)

const match = (name: string, inci = '') => {
  const found = matchMaterial({ name, inci }, materials)
  switch (found.kind) {
    case 'here':
      return `is ${found.material.name}`
    case 'near':
      return found.candidates.map(({ material, why }) => `${material.name} (${why})`).join(', ')
    case 'new':
      return 'new'
  }
}

describe('which material of the house a line is', () => {
  it('[I52] the same bench name is taken without asking, whatever its case and punctuation', () => {
    expect(match('WATER purified')).toBe('is Water, purified')
    expect(match('Panthenol 75%')).toBe('is Panthenol 75 %')
    expect(match('caprylic / capric triglyceride')).toBe('is Caprylic/capric triglyceride')
  })

  it.each([
    ['Aqua', 'Water, purified'],
    ['Eau', 'Water, purified'],
    ['Aqua/Water/Eau', 'Water, purified'],
    ['Water (Aqua)', 'Water, purified'],
    ['Purified water', 'Water, purified'],
    ['Deionised Water', 'Water, purified'],
    ['Vitamin E', 'Tocopherol'],
    ['Salt', 'Sodium chloride'],
    ['Butyrospermum Parkii Butter', 'Shea butter'],
    ['Caustic soda', 'Caustic soda 18 %'],
    ['MCT oil', 'Caprylic/capric triglyceride'],
    ['Glyceryl Stearate (and) PEG-100 Stearate', 'Emulsifier, GS + PEG-100'],
    ['HEC', 'Hydroxyethylcellulose'],
  ])('[I52] %s is offered as %s and left to the person', (written, wanted) => {
    expect(match(written)).toMatch(new RegExp(`^${wanted.replace(/[+%/]/g, '\\$&')} \\(same-substance\\)`))
  })

  it('[I52] a name that is nearly spelled the same is offered', () => {
    expect(match('Squalene')).toBe('Squalane (spelling)')
    expect(match('Cetaeryl alcohol')).toContain('Cetearyl alcohol')
  })

  it('[I52] another strength of the same substance is never offered', () => {
    expect(match('Lactic acid 80 %')).toBe('new')
    expect(match('Citric acid 50 %', 'Citric Acid')).toBe('new')
    expect(match('Citric acid', 'Citric Acid')).toContain('Citric acid 20 %')
  })

  it('[I52] what is not here is new', () => {
    expect(match('Niacinamide')).toBe('new')
    expect(match('PVP')).toBe('is PVP')
    expect(match('PEG')).toBe('new')
  })

  it('[I52] two hundred lines find theirs among a thousand materials while a finger is on the glass', () => {
    const many = indexOf(
      Array.from({ length: 1000 }, (_, at) => ({
        id: `m${at}`,
        name: `Material ${String.fromCharCode(97 + (at % 26))}${at.toString(36)} powder`,
        inci: [{ name: `Inci ${at}`, fraction: 1 }],
        function: '',
      })),
    )
    const from = performance.now()
    for (let line = 0; line < 200; line += 1)
      matchMaterial({ name: `Something ${line} liquid`, inci: `Inci ${line}` }, many)
    expect(performance.now() - from).toBeLessThan(2000)
  })
})
