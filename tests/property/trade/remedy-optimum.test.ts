import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RemedyProblem } from '../../../src/trade/remedy'
import { verifyRemedy } from '../../../src/trade/remedy-check'
import { type Aim, solveRemedy, withinAllLimits } from '../../../src/trade/remedy-coupled'
import { addTheLeast, departTheLeast, type LeastRemedy, spendTheLeast } from '../../../src/trade/remedy-least'
import { same, scaledOf } from '../../../src/trade/remedy-scaled'
import { propertyRuns } from '../runs'
import { coupledProblems, remedyProblems } from './remedy-instances'

const closedForm: Readonly<Record<Aim, (problem: RemedyProblem) => LeastRemedy>> = {
  'least-extra': addTheLeast,
  'least-departure': departTheLeast,
  'least-cost': spendTheLeast,
}
const aims = Object.keys(closedForm) as Aim[]

/** What an error is measured in: the planned total, one tolerance, the cost (or a cent where there is hardly any). */
const unitOf = (problem: RemedyProblem, aim: Aim, optimum: number): number =>
  aim === 'least-extra' ? problem.totalUg : Math.max(aim === 'least-cost' ? 0.01 : 1, optimum)

/**
 * The program's ranges are wider than the closed form's by `same`: so much less may be bought of the dearest line, which
 * dilutes itself. Of a batch that needs hardly any of it that is more than a millionth of a cent.
 */
function worthOfWidth({ lines, totalUg }: RemedyProblem, aim: Aim): number {
  if (aim !== 'least-cost') return 0
  const dearest = Math.max(...lines.map(({ costPerKg = 0 }) => costPerKg))
  const left = Math.min(...lines.map(({ low }) => 1 - low))
  return (same * dearest * (totalUg / 1e9)) / Math.max(left, same)
}

/** On the edge of what is possible the two may differ, by less than a hundred-millionth of a limit. */
const widened = (problem: RemedyProblem): RemedyProblem => ({
  ...problem,
  capacityUg: Math.ceil(problem.capacityUg * (1 + 1e-8)),
  minTotalUg: Math.floor(problem.totalUg * (1 - 1e-8)),
  lines: problem.lines.map((line) => ({ ...line, low: line.low * (1 - 1e-8), high: line.high * (1 + 1e-8) })),
})

/** What two lists of masses are apart from their targets, in tolerances: the worst line, and all together. */
function departures(problem: RemedyProblem, { additionsUg, totalUg }: LeastRemedy & { readonly feasible: true }) {
  const { target, tolerance } = scaledOf(problem)
  const each = problem.lines.map(({ massUg }, index) => {
    const share = (massUg + (additionsUg[index] ?? 0)) / totalUg
    return Math.abs(share - (target[index] ?? 0)) / (tolerance[index] ?? 1)
  })
  return { worst: Math.max(...each), sum: each.reduce((total, one) => total + one, 0) }
}

describe.each(aims)('%s', (aim) => {
  test('[R10] [R12] [R13] a general solver finds one where it does, and none that is better', async () => {
    await fc.assert(
      fc.asyncProperty(remedyProblems(2, 40), async (problem) => {
        const [closed, solved] = [closedForm[aim](problem), await solveRemedy(problem, aim)]
        if (closed.feasible !== solved.feasible) {
          const [other, again] = [closedForm[aim](widened(problem)), await solveRemedy(widened(problem), aim)]
          expect([other.feasible, again.feasible]).toEqual([true, true])
        }
        if (!closed.feasible || !solved.feasible) return
        const unit = unitOf(problem, aim, closed.optimum)
        const width = worthOfWidth(problem, aim)
        expect((closed.optimum - solved.optimum - width) / unit).toBeLessThanOrEqual(1e-6)
        expect((solved.optimum - closed.optimum) / unit).toBeLessThanOrEqual(1e-5)
      }),
      propertyRuns,
    )
  })

  test('[R20] limits over several lines are kept, at the least that a general solver finds', async () => {
    const met = { coupled: 0 }
    await fc.assert(
      fc.asyncProperty(coupledProblems(4, 30), async (problem) => {
        const answer = await withinAllLimits(problem, aim)
        if (!answer.feasible) {
          expect(answer.why.code).not.toBe('NOT_SOLVED')
          return
        }
        const hard = verifyRemedy(problem, answer.additionsUg).filter(
          ({ limit }) => aim !== 'least-departure' || (limit !== 'low' && limit !== 'high'),
        )
        expect(hard).toEqual([])
        const relaxed = closedForm[aim]({ ...problem, couplings: [] })
        if (!relaxed.feasible) throw new Error('A limit more cannot make possible what was not')
        const unit = unitOf(problem, aim, relaxed.optimum)
        expect((relaxed.optimum - answer.optimum) / unit).toBeLessThanOrEqual(1e-6)
        const solved = await solveRemedy(problem, aim)
        if (!solved.feasible) throw new Error('What was found can be found')
        expect(Math.abs(solved.optimum - answer.optimum) / unit).toBeLessThanOrEqual(1e-5)
        if (verifyRemedy(problem, relaxed.additionsUg).some(({ limit }) => limit === 'shared')) met.coupled += 1
      }),
      propertyRuns,
    )
    expect(met.coupled).toBeGreaterThan(propertyRuns.numRuns / 40)
  })
})

test('[R11] of all ways to the least total it takes the least worst departure, then the least of all together', async () => {
  await fc.assert(
    fc.asyncProperty(remedyProblems(2, 25), async (problem) => {
      const [closed, solved] = [addTheLeast(problem), await solveRemedy(problem, 'least-extra')]
      if (!closed.feasible || !solved.feasible) return
      const [ours, theirs] = [departures(problem, closed), departures(problem, solved)]
      expect(ours.worst).toBeLessThanOrEqual(theirs.worst + 1e-3)
      if (Math.abs(ours.worst - theirs.worst) < 1e-3) expect(ours.sum).toBeLessThanOrEqual(theirs.sum + 1e-2)
    }),
    propertyRuns,
  )
})

test('[R12] of all ways to the least worst departure it takes the least of all together', async () => {
  await fc.assert(
    fc.asyncProperty(remedyProblems(2, 25), async (problem) => {
      const [closed, solved] = [departTheLeast(problem), await solveRemedy(problem, 'least-departure')]
      if (!closed.feasible || !solved.feasible) return
      expect(departures(problem, closed).sum).toBeLessThanOrEqual(departures(problem, solved).sum + 1e-2)
    }),
    propertyRuns,
  )
})
