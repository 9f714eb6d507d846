import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { contentsOf, massIn, openLedger, post } from '../../../src/trade/ledger'
import {
  acceptAsIs,
  letQsAbsorb,
  type RemedyLine,
  type RemedyProblem,
  scaleTheRest,
  scaleToSmaller,
} from '../../../src/trade/remedy'
import { verifyRemedy } from '../../../src/trade/remedy-check'
import { addTheLeast, departTheLeast, type LeastRemedy, spendTheLeast } from '../../../src/trade/remedy-least'
import { roundRemedy } from '../../../src/trade/remedy-round'
import { propertyRuns } from '../runs'
import { remedyProblems } from './remedy-instances'

const problems = remedyProblems(2, 40)
const sum = (masses: readonly number[]): number => masses.reduce((total, mass) => total + mass, 0)
const finalOf = ({ lines }: RemedyProblem, additionsUg: readonly number[]): number[] =>
  lines.map(({ massUg }, index) => massUg + (additionsUg[index] ?? 0))

const kinds = {
  exact: scaleTheRest,
  smaller: scaleToSmaller,
  qs: letQsAbsorb,
  accept: acceptAsIs,
  extra: addTheLeast,
  departure: departTheLeast,
  cost: spendTheLeast,
} as const

/** What each kind may leave broken by its nature; accepting may break anything but what is physically there. */
const mayBreak: Readonly<Record<keyof typeof kinds, readonly string[]>> = {
  exact: [],
  smaller: ['least-total'],
  qs: ['low', 'high'],
  accept: ['low', 'high', 'capacity', 'least-total'],
  extra: [],
  departure: ['low', 'high'],
  cost: [],
}
const kindNames = Object.keys(kinds) as (keyof typeof kinds)[]

describe.each(kindNames)('%s', (kind) => {
  test('[R15] a feasible remedy keeps every limit of its kind, in whole micrograms that sum to its total', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const remedy = kinds[kind](problem)
        if (!remedy.feasible) return
        expect(remedy.additionsUg.every(Number.isSafeInteger)).toBe(true)
        expect(sum(finalOf(problem, remedy.additionsUg))).toBe(remedy.totalUg)
        const broken = verifyRemedy(problem, remedy.additionsUg)
        expect(broken.filter(({ limit }) => !mayBreak[kind].includes(limit))).toEqual([])
        const ranges = broken.flatMap((each) => (each.limit === 'low' || each.limit === 'high' ? [each.id] : []))
        expect(remedy.outOfRange).toEqual(ranges)
      }),
      propertyRuns,
    )
  })

  test('[R19] rounded to the balances it is weighed as told: the ledger ends at its total, nothing new breaks unsaid', () => {
    const step = fc.constantFrom(1_000, 10_000, 100_000)
    fc.assert(
      fc.property(problems, step, step, (problem, qsStepUg, othersStepUg) => {
        const remedy = kinds[kind](problem)
        if (!remedy.feasible) return
        const stepsUg = problem.lines.map((_, index) => (index === problem.qsIndex ? qsStepUg : othersStepUg))
        const rounded = roundRemedy(problem, remedy.additionsUg, stepsUg)
        expect(Math.abs(rounded.totalUg - remedy.totalUg)).toBeLessThanOrEqual(
          rounded.residual === null
            ? Math.max(...stepsUg) * problem.lines.length
            : 1.5 * (rounded.residual === problem.lines[0]?.id ? qsStepUg : othersStepUg),
        )

        const ledger = openLedger()
        problem.lines.forEach(({ id, massUg }, index) => {
          const addUg = rounded.additionsUg[index] ?? Number.NaN
          expect(addUg % (stepsUg[index] ?? 1)).toBe(0)
          for (const netUg of [massUg, addUg].filter((each) => each !== 0))
            expect(post(ledger, { kind: 'add', to: 'beaker', component: id, massUg: netUg }).ok).toBe(true)
        })
        const totalUg = massIn(ledger, 'beaker')
        expect(totalUg).toBe(rounded.totalUg)

        const said = rounded.breaks.flatMap((each) => ('id' in each ? [each.id] : [each.limit]))
        const contents = contentsOf(ledger, 'beaker')
        for (const { id, low, high } of problem.lines) {
          if (remedy.outOfRange.includes(id) || said.includes(id)) continue
          const slack = 2 + 1e-9 * problem.totalUg
          expect((contents.get(id) ?? 0) - low * totalUg).toBeGreaterThanOrEqual(-slack)
          expect(high * totalUg - (contents.get(id) ?? 0)).toBeGreaterThanOrEqual(-slack)
        }
      }),
      propertyRuns,
    )
  })

  test('[R16] the order of the lines changes nothing', () => {
    fc.assert(
      fc.property(problems, fc.infiniteStream(fc.nat()), (problem, numbers) => {
        const order = problem.lines.map((line, index) => ({ line, index, key: numbers.next().value as number }))
        order.sort((a, b) => a.key - b.key)
        const permuted: RemedyProblem = {
          ...problem,
          lines: order.map(({ line }) => line),
          qsIndex: order.findIndex(({ index }) => index === problem.qsIndex),
        }
        const [one, other] = [kinds[kind](problem), kinds[kind](permuted)]
        expect(other.feasible).toBe(one.feasible)
        if (!one.feasible || !other.feasible) return
        expect(Math.abs(other.totalUg - one.totalUg)).toBeLessThanOrEqual(1)
        order.forEach(({ index }, at) => {
          const gap = (other.additionsUg[at] ?? Number.NaN) - (one.additionsUg[index] ?? Number.NaN)
          expect(Math.abs(gap)).toBeLessThanOrEqual(2)
        })
      }),
      propertyRuns,
    )
  })
})

test('[R16] a batch of seven times the size has the same remedies, seven times as large', () => {
  const seven = (massUg: number): number => massUg * 7
  fc.assert(
    fc.property(problems, fc.constantFrom(addTheLeast, departTheLeast, spendTheLeast), (problem, kind) => {
      const larger: RemedyProblem = {
        ...problem,
        totalUg: seven(problem.totalUg),
        capacityUg: seven(problem.capacityUg),
        lines: problem.lines.map((line) => ({
          ...line,
          massUg: seven(line.massUg),
          stockUg: line.stockUg === null ? null : seven(line.stockUg),
        })),
      }
      const [one, other] = [kind(problem), kind(larger)]
      expect(other.feasible).toBe(one.feasible)
      if (!one.feasible || !other.feasible) return
      const factor = kind === departTheLeast ? 1 : 7
      expect(Math.abs(other.optimum - one.optimum * factor)).toBeLessThanOrEqual(1e-9 * Math.max(1, other.optimum))
    }),
    propertyRuns,
  )
})

test('[R14] where no line may stray, the least extra is the exact ratio', () => {
  const strict = problems.map(
    (problem): RemedyProblem => ({
      ...problem,
      capacityUg: problem.totalUg * 3,
      lines: problem.lines.map((line) => ({ ...line, low: line.fraction, high: line.fraction })),
    }),
  )
  const met = { both: 0 }
  fc.assert(
    fc.property(strict, (problem) => {
      const [exact, extra] = [scaleTheRest(problem), addTheLeast(problem)]
      expect(extra.feasible).toBe(exact.feasible)
      if (!exact.feasible || !extra.feasible) return
      met.both += 1
      expect(Math.abs(extra.optimum - exact.factor * problem.totalUg)).toBeLessThanOrEqual(1e-9 * problem.totalUg)
      exact.additionsUg.forEach((addUg, index) => {
        expect(Math.abs((extra.additionsUg[index] ?? Number.NaN) - addUg)).toBeLessThanOrEqual(2)
      })
    }),
    propertyRuns,
  )
  expect(met.both).toBeGreaterThan(propertyRuns.numRuns / 20)
})

describe('[R17] more to add, or a larger vessel, never makes it worse', () => {
  const more = (line: RemedyLine, byUg: number): RemedyLine => ({
    ...line,
    stockUg: line.stockUg === null ? null : line.stockUg + byUg,
  })
  test.each([
    ['least extra', addTheLeast],
    ['least departure', departTheLeast],
    ['least cost', spendTheLeast],
  ] as const)('%s', (_, kind) => {
    fc.assert(
      fc.property(problems, fc.nat(1e8), fc.nat(1e9), (problem, stockUg, roomUg) => {
        const wider: RemedyProblem = {
          ...problem,
          capacityUg: problem.capacityUg + roomUg,
          lines: problem.lines.map((line) => more(line, stockUg)),
        }
        const [narrow, wide]: readonly LeastRemedy[] = [kind(problem), kind(wider)]
        if (!narrow?.feasible) return
        expect(wide?.feasible).toBe(true)
        if (wide?.feasible) expect(wide.optimum).toBeLessThanOrEqual(narrow.optimum * (1 + 1e-9) + 1e-9)
      }),
      propertyRuns,
    )
  })
})
