import fc from 'fast-check'
import highsLoader from 'highs'
import { acceptAsIs, letQsAbsorb, type RemedyProblem, scaleTheRest, scaleToSmaller } from '../../src/trade/remedy'
import { type Aim, withinAllLimits } from '../../src/trade/remedy-coupled'
import { addTheLeast, departTheLeast, type LeastRemedy, spendTheLeast } from '../../src/trade/remedy-least'
import { leastCostOf, leastTotalOf, leastWorstOf, programOf } from '../../src/trade/remedy-program'
import { meritsOf, rankRemedies } from '../../src/trade/remedy-rank'
import { roundRemedy } from '../../src/trade/remedy-round'
import { scaledOf } from '../../src/trade/remedy-scaled'
import type { Program } from '../../src/trade/solve'
import { coupledProblems, remedyProblems } from '../property/trade/remedy-instances'

type Highs = Awaited<ReturnType<typeof highsLoader>>

const seed = 20_240_117

/** All kinds of 40 lines, at the 99th percentile. */
const budgetMs = 5
const aims: readonly Aim[] = ['least-extra', 'least-departure', 'least-cost']
const closedForm: Readonly<Record<Aim, (problem: RemedyProblem) => LeastRemedy>> = {
  'least-extra': addTheLeast,
  'least-departure': departTheLeast,
  'least-cost': spendTheLeast,
}

/**
 * How long the remedies of 40 lines take, against a solver built to wasm on the same instances, and whether the
 * statuses and optima of 2,000 random instances agree with it, with limits over several lines and without.
 */
export async function runRemedyBench(): Promise<object> {
  const highs = await highsLoader()
  const large = halfPossible(fc.sample(remedyProblems(40, 40), { seed, numRuns: 10_000 }))
  for (const problem of large) everyKind(problem)
  const all = large.map((problem) => timeOf(() => everyKind(problem)))
  const kinds = aims.map((aim) => {
    const ours = large.map((problem) => timeOf(() => closedForm[aim](problem)))
    const theirs = large
      .filter((_, index) => index % 8 === 0)
      .map((problem) => timeOf(() => highsAnswer(highs, problem, aim)))
    const feasible = large.filter((problem) => closedForm[aim](problem).feasible).length
    return [aim, { feasible, ...quantiles(ours), highs: quantiles(theirs), ratio: ratioOf(ours, theirs) }] as const
  })
  const coupledLarge = fc.sample(coupledProblems(40, 40), { seed, numRuns: 500 })
  const coupled: number[] = []
  for (const problem of coupledLarge) coupled.push(await leastTimeOf(async () => allAims(problem)))
  return {
    lines: 40,
    runs: large.length,
    allKindsMs: { ...quantiles(all), budget: budgetMs, within: quantiles(all).p99 <= budgetMs },
    ...Object.fromEntries(kinds),
    coupledAimsMs: { runs: coupled.length, ...quantiles(coupled) },
    agreement: await agreement(highs, remedyProblems(5, 40)),
    coupledAgreement: await agreement(highs, coupledProblems(5, 40)),
  }
}

/** A thousand that can be mended within all limits, which takes longer, and a thousand that cannot. */
function halfPossible(problems: readonly RemedyProblem[]): readonly RemedyProblem[] {
  const possible = problems.filter((problem) => addTheLeast(problem).feasible)
  const impossible = problems.filter((problem) => !addTheLeast(problem).feasible)
  return [...possible.slice(0, 1000), ...impossible.slice(0, 1000)]
}

/** All that the bench asks for one deviation: every kind, rounded to the balances and ranked. */
function everyKind(problem: RemedyProblem): void {
  const answers = [scaleTheRest, scaleToSmaller, letQsAbsorb, addTheLeast, departTheLeast, spendTheLeast, acceptAsIs]
    .map((kind) => kind(problem))
    .filter((answer) => answer.feasible)
  const stepsUg = problem.lines.map(() => 10_000)
  rankRemedies(answers, (answer) => meritsOf(problem, roundRemedy(problem, answer.additionsUg, stepsUg).additionsUg))
}

interface Agreement {
  readonly instances: number
  readonly compared: number
  readonly feasible: number
  readonly wrongStatus: number
  readonly wrongOptimum: number
  readonly largestError: Readonly<Record<string, number>>
}

async function agreement(highs: Highs, problems: fc.Arbitrary<RemedyProblem>): Promise<Agreement> {
  const sample = fc.sample(problems, { seed: seed + 1, numRuns: 2000 })
  const largestError: Record<string, number> = {}
  let [compared, feasible, wrongStatus, wrongOptimum] = [0, 0, 0, 0]
  for (const problem of sample) {
    for (const aim of aims) {
      const ours = await withinAllLimits(problem, aim)
      const theirs = highsAnswer(highs, problem, aim)
      compared += 1
      if (ours.feasible !== (theirs !== null)) wrongStatus += 1
      if (!ours.feasible || theirs === null) continue
      feasible += 1
      const error = Math.abs(ours.optimum - theirs) / unitOf(problem, aim, theirs)
      if (error > 1e-6) wrongOptimum += 1
      largestError[aim] = Math.max(largestError[aim] ?? 0, error)
    }
  }
  return { instances: sample.length, compared, feasible, wrongStatus, wrongOptimum, largestError }
}

/** What an error is measured in: the planned total, one tolerance, the cost (or a cent where there is hardly any). */
function unitOf(problem: RemedyProblem, aim: Aim, optimum: number): number {
  if (aim === 'least-extra') return problem.totalUg
  return aim === 'least-departure' ? Math.max(1, optimum) : Math.max(0.01, optimum)
}

/** The optimum by the other solver, in the unit of ours; null where it finds none. */
function highsAnswer(highs: Highs, problem: RemedyProblem, aim: Aim): number | null {
  const scaled = scaledOf(problem)
  const total = Math.max(1, scaled.contents)
  const departs = aim === 'least-departure'
  const range = departs ? { least: total, most: total } : { least: scaled.least, most: scaled.capacity }
  if (departs && total > scaled.capacity) return null
  const program = programOf(problem, scaled, range, departs ? 'soft' : 'hard')
  const solution = highs.solve(textOf(programFor(program, aim, total)), {
    primal_feasibility_tolerance: 1e-10,
    dual_feasibility_tolerance: 1e-10,
    output_flag: false,
  })
  if (solution.Status !== 'Optimal') return null
  return aim === 'least-extra' ? solution.ObjectiveValue * problem.totalUg : solution.ObjectiveValue
}

function programFor(program: ReturnType<typeof programOf>, aim: Aim, total: number): Program {
  switch (aim) {
    case 'least-extra':
      return leastTotalOf(program)
    case 'least-departure':
      return leastWorstOf(program, total)
    case 'least-cost':
      return leastCostOf(program)
  }
}

/** A program as the text that linear-program solvers read. */
function textOf({ minimise, rows }: Program): string {
  const sum = (coefficients: ReadonlyMap<number, number>): string =>
    [...coefficients].map(([variable, value]) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} v${variable}`).join(' ')
  const lines = rows.flatMap(({ coefficients, least, most }) => [
    ...(least === undefined ? [] : [`${sum(coefficients)} >= ${least}`]),
    ...(most === undefined ? [] : [`${sum(coefficients)} <= ${most}`]),
  ])
  return `Minimize\n goal: ${sum(minimise)}\nSubject To\n ${lines.join('\n ')}\nEnd\n`
}

async function allAims(problem: RemedyProblem): Promise<void> {
  for (const aim of aims) await withinAllLimits(problem, aim)
}

async function leastTimeOf(work: () => Promise<void>): Promise<number> {
  let leastMs = Number.POSITIVE_INFINITY
  for (let times = 0; times < 3; times += 1) {
    const startedAt = performance.now()
    await work()
    leastMs = Math.min(leastMs, performance.now() - startedAt)
  }
  return leastMs
}

/** The best of three in ms, so that what else the machine does is not counted. */
function timeOf(work: () => unknown): number {
  const times = [0, 0, 0].map(() => {
    const startedAt = performance.now()
    work()
    return performance.now() - startedAt
  })
  return Math.min(...times)
}

function quantiles(times: readonly number[]): { readonly p50: number; readonly p99: number } {
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number): number => Number((sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN).toFixed(4))
  return { p50: at(0.5), p99: at(0.99) }
}

function ratioOf(ours: readonly number[], theirs: readonly number[]): { readonly p50: number; readonly p99: number } {
  const [a, b] = [quantiles(ours), quantiles(theirs)]
  return { p50: Number((b.p50 / a.p50).toFixed(1)), p99: Number((b.p99 / a.p99).toFixed(1)) }
}
