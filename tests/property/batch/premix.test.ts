import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Line, Revision } from '../../../src/batch/formula'
import { portionsOf } from '../../../src/batch/label-draft'
import { type PremixChoice, unmixed, withPremixes } from '../../../src/batch/premix'
import { dilutionOf, premixesFor } from '../../../src/batch/premix-recipe'
import { planTargets } from '../../../src/trade/targets'
import { fineBalance, material, qs, revision, share, water } from '../../support/formula-maker'
import { inciParts } from '../../support/label'
import { propertyRuns } from '../runs'

const materials = new Map(
  [water, ...['oil', 'wax', 'active', 'trace'].map((id) => material(id))].map((each) => [each.id, each]),
)

/** Hundredths of a percent; the small ones are what is diluted. */
const formulas = fc
  .record({
    oil: fc.integer({ min: 500, max: 3000 }),
    wax: fc.integer({ min: 500, max: 2000 }),
    active: fc.integer({ min: 1, max: 30 }),
    trace: fc.integer({ min: 1, max: 9 }),
  })
  .map((parts): Revision => {
    const lines: Line[] = Object.entries(parts).map(([id, hundredths]) => share(id, hundredths / 100))
    return revision([qs(), ...lines])
  })
const choices = fc.record({
  active: fc.constantFrom('water', 'oil', 'wax'),
  trace: fc.constantFrom('water', 'oil', 'active'),
  activeIn: fc.constantFrom(10, 20),
  traceIn: fc.constantFrom(10, 20, 50),
})

const sharesOf = (of: Revision) =>
  new Map(
    of.phases
      .flatMap(({ lines }) => lines)
      .map(({ id, amount }) => [id, amount.kind === 'fraction' ? amount.fraction : 0]),
  )

const inciOf = (of: Revision, known = materials) => inciParts(portionsOf(of, known))

describe('pre-mixes', () => {
  test('[F22] a batch with pre-mixes has the same composition, and its targets the same sum', () => {
    fc.assert(
      fc.property(formulas, choices, fc.integer({ min: 50, max: 2000 }), (formula, chosen, grams) => {
        const asked: PremixChoice[] = [
          { line: 'active', into: chosen.active, oneIn: chosen.activeIn },
          { line: 'trace', into: chosen.trace, oneIn: chosen.traceIn },
        ]
        const mixed = withPremixes(formula, asked, materials)
        if (!mixed.ok) {
          expect(mixed.refusal.code).toBe(chosen.trace === 'active' ? 'PREMIX_OF_PREMIX' : 'PREMIX_TOO_MUCH')
          return
        }
        const known = new Map([...materials, ...mixed.value.materials.map((each) => [each.id, each] as const)])
        const before = inciOf(formula)
        for (const [name, fraction] of inciOf(mixed.value.revision, known))
          expect(fraction).toBeCloseTo(before.get(name) ?? 0, 10)
        const apart = unmixed(sharesOf(mixed.value.revision), mixed.value.premixes)
        for (const line of ['oil', 'wax', 'active', 'trace'])
          expect(apart.get(line)).toBeCloseTo(sharesOf(formula).get(line) ?? 0, 10)
        const sizeUg = grams * 1_000_000
        const lines = mixed.value.revision.phases.flatMap((phase) => phase.lines)
        const plan = planTargets(
          lines.map(({ id, amount }) => ({ id, amount, stepUg: 1_000 })),
          sizeUg,
        )
        if (!plan.ok) throw new Error(plan.refusal.code)
        expect([...plan.value.lines.values()].reduce((sum, { targetUg }) => sum + targetUg, 0)).toBe(sizeUg)
      }),
      propertyRuns,
    )
  })

  test('[F23] two lines diluted in each other, or one in itself, are refused, over any number of lines', () => {
    const formula = revision([qs(), share('oil', 20), share('active', 5), share('trace', 5)])
    const ring = (...lines: string[]) =>
      withPremixes(
        formula,
        lines.map((line, at) => ({ line, into: lines[(at + 1) % lines.length] ?? '', oneIn: 10 })),
        materials,
      )
    for (const lines of [['active'], ['active', 'trace'], ['oil', 'active', 'trace']])
      expect(ring(...lines)).toMatchObject({ ok: false, refusal: { code: 'PREMIX_CIRCULAR' } })
    const chain = [
      { line: 'trace', into: 'active', oneIn: 2 },
      { line: 'active', into: 'water', oneIn: 2 },
    ]
    expect(withPremixes(formula, chain, materials)).toMatchObject({ refusal: { code: 'PREMIX_OF_PREMIX' } })
    expect(withPremixes(formula, chain.slice(1), materials)).toMatchObject({ ok: true })
  })

  test('[F24] what is proposed is weighed well, on the balance, makes enough, and leaves its carrier something', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 199 }), fc.integer({ min: 1_000, max: 50_000 }), (smallMg, carrierMg) => {
        const planned = (id: string, targetUg: number, amount: Line['amount']) => ({
          line: { id, materialId: id, amount },
          phase: 'A',
          material: material(id),
          fraction: 0,
          targetUg,
          balance: fineBalance,
          lots: [],
        })
        const small = planned('trace', smallMg * 1_000, { kind: 'fraction', fraction: 0.001 })
        const carrier = planned('oil', carrierMg * 1_000, { kind: 'fraction', fraction: 0.1 })
        for (const recipe of premixesFor(small, [small, carrier], 200_000)) {
          expect(recipe.doseUg).toBeGreaterThanOrEqual(200_000)
          expect(recipe.neatUg).toBeGreaterThanOrEqual(200_000)
          expect([recipe.neatUg % 1_000, recipe.thinnerUg % 1_000]).toEqual([0, 0])
          expect(recipe.neatUg + recipe.thinnerUg).toBe(recipe.neatUg * recipe.oneIn)
          expect(recipe.neatUg * recipe.oneIn).toBeGreaterThan(recipe.doseUg)
          expect(recipe.carrierLeftUg).toBeGreaterThan(0)
          expect(recipe.carrierLeftUg + recipe.doseUg).toBe(small.targetUg + carrier.targetUg)
          const asPlanned = { ...small, targetUg: recipe.doseUg }
          expect(dilutionOf(asPlanned, recipe.oneIn)).toEqual({ neatUg: recipe.neatUg, thinnerUg: recipe.thinnerUg })
        }
      }),
      propertyRuns,
    )
  })
})
