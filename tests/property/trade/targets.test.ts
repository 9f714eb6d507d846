import fc from 'fast-check'
import { expect, test } from 'vitest'
import { roundToStep } from '../../../src/trade/mass'
import { planTargets, type TargetLine, type TargetPlan } from '../../../src/trade/targets'
import { propertyRuns } from '../runs'

const stepUg = fc.constantFrom(1_000, 10_000, 100_000)
/** Hundredths of a percent, as formulas state them. */
const hundredths = (most: number): fc.Arbitrary<number> => fc.integer({ min: 1, max: most }).map((n) => n / 10_000)
const assay = fc.option(
  fc.integer({ min: 50, max: 100 }).map((percent) => percent / 100),
  { nil: undefined },
)

const fractionLine = fc.record({ fraction: hundredths(900), stepUg, assumed: assay, lot: assay })
const adjusterLine = fc.record({ expected: hundredths(100), stepUg })
const formula = fc.record({
  sizeUg: fc.integer({ min: 2_000, max: 2_000_000 }).map((tenths) => tenths * 100_000),
  qsStepUg: stepUg,
  withheld: fc.option(hundredths(500), { nil: undefined }),
  heldBack: fc.option(hundredths(500), { nil: undefined }),
  parts: fc.array(fractionLine, { maxLength: 8 }),
  adjusters: fc.array(adjusterLine, { maxLength: 3 }),
})

const lineOf = (
  part: { fraction: number; stepUg: number; assumed: number | undefined; lot: number | undefined },
  index: number,
): TargetLine => ({
  id: `part ${index}`,
  amount: { kind: 'fraction', fraction: part.fraction },
  stepUg: part.stepUg,
  ...(part.assumed === undefined ? {} : { assayAssumed: part.assumed }),
  ...(part.lot === undefined ? {} : { lotAssay: part.lot }),
})

const withQs = formula.map(({ sizeUg, qsStepUg, withheld, heldBack, parts, adjusters }) => ({
  sizeUg,
  lines: [
    {
      id: 'water',
      stepUg: qsStepUg,
      amount: {
        kind: 'qs' as const,
        portions: [
          { step: 'first', rest: true as const },
          ...(withheld === undefined ? [] : [{ step: 'withheld', fraction: withheld }]),
        ],
        ...(heldBack === undefined ? {} : { heldBack }),
      },
    },
    ...parts.map(lineOf),
    ...adjusters.map((each, index) => ({
      id: `adjuster ${index}`,
      stepUg: each.stepUg,
      amount: { kind: 'as-needed' as const, expected: each.expected, min: 0, max: 1 },
    })),
  ],
}))

const targetsOf = (plan: TargetPlan): readonly number[] => [...plan.lines.values()].map(({ targetUg }) => targetUg)
const sum = (masses: readonly number[]): number => masses.reduce((total, mass) => total + mass, 0)

test('[L20] targets sum to the batch size to the last microgram, and so do the figures that are shown', () => {
  fc.assert(
    fc.property(withQs, ({ lines, sizeUg }) => {
      const planned = planTargets(lines, sizeUg)
      if (!planned.ok) {
        expect(planned.refusal.code).toMatch(/^(QS_NEGATIVE|TARGET_ROUNDS_TO_ZERO)$/)
        return
      }
      const shown = [...planned.value.lines.values()].map((line) => roundToStep(line.targetUg, line.shownStepUg))
      expect(sum(targetsOf(planned.value))).toBe(sizeUg)
      expect(planned.value.totalUg).toBe(sizeUg)
      expect(sum(shown)).toBe(sizeUg)
      expect(sum([...planned.value.lines.values()].map(({ fraction }) => fraction))).toBeCloseTo(1, 9)
    }),
    propertyRuns,
  )
})

test('[L21] the portions and what is held back make up the q.s. line exactly, none below nothing', () => {
  fc.assert(
    fc.property(withQs, ({ lines, sizeUg }) => {
      const planned = planTargets(lines, sizeUg)
      if (!planned.ok) return
      const { lines: targets, heldBackUg } = planned.value
      const portions = (targets.get('water')?.portions ?? []).map(({ targetUg }) => targetUg)
      expect(sum(portions) + heldBackUg).toBe(targets.get('water')?.targetUg)
      expect([...portions, heldBackUg].every((massUg) => Number.isSafeInteger(massUg) && massUg >= 0)).toBe(true)
    }),
    propertyRuns,
  )
})

test('[L22] every line but q.s. is within half a step of its exact mass', () => {
  fc.assert(
    fc.property(withQs, ({ lines, sizeUg }) => {
      const planned = planTargets(lines, sizeUg)
      if (!planned.ok) return
      for (const line of lines.slice(1)) {
        const target = planned.value.lines.get(line.id)
        const exactUg = (target?.fraction ?? Number.NaN) * sizeUg
        expect(Math.abs((target?.targetUg ?? Number.NaN) - exactUg)).toBeLessThanOrEqual(line.stepUg / 2 + 1e-3)
      }
    }),
    propertyRuns,
  )
})

test('[L20] without q.s. and without a difference of assay targets sum to the size as well', () => {
  const weights = fc.array(fc.record({ weight: fc.integer({ min: 10, max: 1000 }), stepUg }), {
    minLength: 1,
    maxLength: 12,
  })
  fc.assert(
    fc.property(weights, fc.integer({ min: 5_000, max: 200_000 }), (parts, tenths) => {
      const sizeUg = tenths * 100_000
      const whole = sum(parts.map(({ weight }) => weight))
      const lines = parts.map(({ weight, stepUg: step }, index) =>
        lineOf({ fraction: weight / whole, stepUg: step, assumed: undefined, lot: undefined }, index),
      )
      const planned = planTargets(lines, sizeUg)
      if (!planned.ok) {
        expect(planned.refusal.code).toBe('TARGET_ROUNDS_TO_ZERO')
        return
      }
      expect(sum(targetsOf(planned.value))).toBe(sizeUg)
      expect(planned.value.totalUg).toBe(sizeUg)
    }),
    propertyRuns,
  )
})
