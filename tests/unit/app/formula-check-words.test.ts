import { describe, expect, test } from 'vitest'
import { createFormat } from '../../../src/app/format'
import { boundsText, checkSentence, figureText } from '../../../src/app/refusals/formula-checks'
import { checksOf, type FormulaCheck } from '../../../src/batch/formula-checks'
import { demonstrationCatalogue } from '../../house/demonstration/catalogue'
import { checksFor, found, material, pH, qs, revision, share } from '../../support/formula-maker'

const { formulas, materials, balances } = demonstrationCatalogue
const known = new Map(materials.map((each) => [each.id, each]))
const point = createFormat('.')
const comma = createFormat(',')

/** Made to be wrong in many ways at once. */
const wrong = checksFor(
  revision([qs(), share('acid', 0.9), share('gum', 0.004), share('wash', 12), share('quat', 3), share('gone', 1)], {
    specification: [pH(6.5, 7.25)],
    sharedLimits: [{ id: 's', name: 'Washing matter', of: { kind: 'active', class: 'anionic' }, max: 0.01 }],
  }),
  [
    material('acid', {
      inci: [{ name: 'Sodium Benzoate', fraction: 1 }],
      function: 'preservative',
      useLevel: { min: 0.003, max: 0.005 },
    }),
    material('gum', { inci: [{ name: 'Carbomer', fraction: 0.8 }] }),
    material('wash', { activeMatter: { fraction: 0.3, class: 'anionic' } }),
    material('quat', { activeMatter: { fraction: 0.3, class: 'cationic surfactant' } }),
  ],
)

describe('what a check says', () => {
  test('[A51] every sentence ends as one, has no hole and does not shout', () => {
    const demonstrated = formulas.flatMap((formula) =>
      formula.revisions.flatMap((each) => checksOf(each, formula, known, { balances })),
    )
    const all: readonly FormulaCheck[] = [...demonstrated, ...wrong]
    expect(new Set(all.map(({ code }) => code)).size).toBeGreaterThan(18)
    for (const check of all) {
      const sentence = checkSentence(check, point)
      expect(sentence).toMatch(/^\S.*\.$/s)
      expect(sentence).not.toMatch(/undefined|NaN|!|\[object/)
    }
  })

  test('[A52] figures and limits are written in the decimal mark, with their units', () => {
    const check = found(wrong, 'PRESERVATIVE_PH_OUT')
    expect(checkSentence(check, comma)).toContain('6,5–7,25')
    expect(check.figure && figureText(check.figure, comma)).toBe('7,25')
    const small = found(wrong, 'TOO_SMALL_TO_WEIGH')
    expect(small.figure && figureText(small.figure, comma)).toBe('0,0200\u00a0g')
    expect(small.limit && boundsText(small.limit, comma)).toBe('at least 0,2000\u00a0g')
    const strong = found(wrong, 'PRESERVATIVE_STRONG')
    expect(strong.limit && boundsText(strong.limit, point)).toBe('0.3–0.5\u00a0%')
  })
})
