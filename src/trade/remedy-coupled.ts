import { bindingAt, shareAt, verifyRemedy } from './remedy-check'
import { addTheLeast, departTheLeast, type LeastRemedy, remedyOf, spendTheLeast, worstLines } from './remedy-least'
import { type Limit, type RemedyProblem, type RemedyRefusal, sumOf } from './remedy-model'
import {
  leastCostOf,
  leastSumOf,
  leastTotalOf,
  leastWorstOf,
  programOf,
  type RemedyProgram,
  worstOf,
} from './remedy-program'
import { type Scaled, scaledOf } from './remedy-scaled'
import { type Solved, solveProgram } from './solve'

export type Aim = 'least-extra' | 'least-departure' | 'least-cost'

/** The closed form of each aim, which knows nothing of couplings. */
const closedForm: Readonly<Record<Aim, (problem: RemedyProblem) => LeastRemedy>> = {
  'least-extra': addTheLeast,
  'least-departure': departTheLeast,
  'least-cost': spendTheLeast,
}

/**
 * The best there is of an aim with the couplings kept as well (they are hard even where ranges are not). An answer of
 * the closed form that happens to keep them is the answer, and what is impossible without them stays so; only else is
 * the solver loaded. What it answers is tried against every limit before it is returned.
 */
export async function withinAllLimits(problem: RemedyProblem, aim: Aim): Promise<LeastRemedy> {
  const closed = closedForm[aim](problem)
  if (!closed.feasible) return closed
  const broken = verifyRemedy(problem, closed.additionsUg).some(({ limit }) => limit === 'shared')
  return broken ? solveRemedy(problem, aim) : closed
}

/** The same by the linear program alone, with couplings or without. */
export async function solveRemedy(problem: RemedyProblem, aim: Aim): Promise<LeastRemedy> {
  const solved = await solutionOf(problem, aim)
  if (!solved.solved) return { feasible: false, why: await whyNot(problem, aim, solved) }
  const { masses, optimum } = solved
  const remedy = remedyOf(problem, masses, Math.round(sumOf(masses) * problem.totalUg))
  const soft = aim === 'least-departure' ? ['low', 'high', 'least-total'] : []
  if (verifyRemedy(problem, remedy.additionsUg).some(({ limit }) => !soft.includes(limit)))
    return { feasible: false, why: { code: 'NOT_SOLVED' } }

  const finalUg = finalOf(problem, remedy.additionsUg)
  const binding = bindingAt(problem, finalUg)
  const shared = binding.filter(({ limit }) => limit === 'shared')
  const binds: readonly Limit[] =
    aim === 'least-departure' ? [...worstLines(problem, remedy, optimum), ...shared] : binding
  return { ...remedy, optimum, binds }
}

type Solution =
  | { readonly solved: true; readonly masses: readonly number[]; readonly optimum: number }
  | Extract<Solved, { readonly solved: false }>

async function solutionOf(problem: RemedyProblem, aim: Aim): Promise<Solution> {
  const scaled = scaledOf(problem)
  if (aim === 'least-departure') return leastDeparture(problem, scaled)
  const program = programOf(problem, scaled, { least: scaled.least, most: scaled.capacity }, 'hard')
  const first = await solveProgram(aim === 'least-extra' ? leastTotalOf(program) : leastCostOf(program))
  if (!first.solved) return first
  const masses = massesOf(scaled, first.values)
  if (aim === 'least-cost') return { solved: true, masses, optimum: first.objective }

  // The ties at the least total are broken at a whole number of micrograms; where that is off a point, they stay.
  const total = Math.ceil(sumOf(masses) * problem.totalUg - 1e-3) / problem.totalUg
  const tied = programOf(problem, scaled, { least: total, most: total }, 'hard')
  const evened = await evenedOut(tied, total)
  return { solved: true, masses: evened ?? masses, optimum: sumOf(masses) * problem.totalUg }
}

async function leastDeparture(problem: RemedyProblem, scaled: Scaled): Promise<Solution> {
  const total = Math.max(1, scaled.contents)
  if (total > scaled.capacity) return { solved: false, why: 'impossible' }
  const program = programOf(problem, scaled, { least: total, most: total }, 'soft')
  const first = await solveProgram(leastWorstOf(program, total))
  if (!first.solved) return first
  const masses = massesOf(scaled, first.values)
  const optimum = worstOf(scaled, masses, total)
  const spread = await spreadOut(program, total, optimum)
  return { solved: true, masses: spread ?? masses, optimum }
}

/** The least worst departure at a total, then the least sum of departures; undefined where the total is impossible. */
async function evenedOut(program: RemedyProgram, total: number): Promise<readonly number[] | undefined> {
  const first = await solveProgram(leastWorstOf(program, total))
  if (!first.solved) return undefined
  const masses = massesOf(program.scaled, first.values)
  return (await spreadOut(program, total, worstOf(program.scaled, masses, total))) ?? masses
}

async function spreadOut(program: RemedyProgram, total: number, worst: number): Promise<readonly number[] | undefined> {
  const spread = await solveProgram(leastSumOf(program, total, worst * (1 + 1e-9) + 1e-9))
  return spread.solved ? massesOf(program.scaled, spread.values) : undefined
}

const massesOf = ({ held }: Scaled, values: readonly number[]): number[] =>
  held.map((mass, line) => mass + (values[line] ?? 0))

const finalOf = ({ lines }: RemedyProblem, additionsUg: readonly number[]): readonly number[] =>
  lines.map(({ massUg }, line) => massUg + (additionsUg[line] ?? 0))

/**
 * Of the couplings those that cannot be kept together: each is left out where it is impossible without it too. Where the
 * solver gave up on all of them, fewer may still be known to be impossible.
 */
async function whyNot(
  problem: RemedyProblem,
  aim: Aim,
  { why }: Extract<Solved, { readonly solved: false }>,
): Promise<RemedyRefusal> {
  const relaxed = closedForm[aim](problem)
  if (!relaxed.feasible) return relaxed.why
  let couplings = problem.couplings ?? []
  let known = why === 'impossible'
  for (const coupling of couplings) {
    const others = couplings.filter((each) => each !== coupling)
    const solved = await solutionOf({ ...problem, couplings: others }, aim)
    if (solved.solved || solved.why === 'gave-up') continue
    couplings = others
    known = true
  }
  const [first] = couplings
  if (!known || first === undefined) return { code: 'NOT_SOLVED' }
  const allLocked = problem.lines.every(({ locked }) => locked)
  const ids = couplings.map(({ id }) => id)
  if (first.kind !== 'share') return { code: 'SHARED_LIMITS_CONFLICT', ids, allLocked }
  const at = shareAt(problem, first, finalOf(problem, relaxed.additionsUg))
  return { code: 'SHARED_LIMITS_CONFLICT', ids, at, limit: at > first.high ? first.high : first.low, allLocked }
}
