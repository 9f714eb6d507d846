import { ratioOf } from './decimal'
import { fractionOf, type Micrograms } from './mass'
import { outOfRangeAt } from './remedy-check'
import {
  type FeasibleRemedy,
  leastTotalOf,
  mostTotalOf,
  type RemedyLine,
  type RemedyProblem,
  type RemedyRefusal,
  stillToHand,
  sumOf,
  tooMuch,
} from './remedy-model'

export type { RemedyLine, RemedyProblem, RemedyRefusal } from './remedy-model'

/** The exact ratio: every line at `factor` times its plan. */
export type ScaleRemedy =
  | (FeasibleRemedy & { readonly factor: number })
  | {
      readonly feasible: false
      readonly why: RemedyRefusal
      /** The line that is furthest over its plan and so asks for the larger batch; null where the least total does. */
      readonly demandedBy: string | null
      /** Where only the least total stands in the way: the smaller batch that still has the exact ratio. */
      readonly smaller?: { readonly factor: number; readonly totalUg: Micrograms }
    }

/** The q.s. line gives way at the planned total; its final mass is told even where it cannot be reached. */
export type QsRemedy =
  | (FeasibleRemedy & { readonly qsFinalUg: Micrograms })
  | {
      readonly feasible: false
      readonly why: RemedyRefusal
      readonly qsFinalUg: Micrograms | null
      readonly outOfRange: readonly string[]
    }

/** Two ratios nearer than this are the same: they come from whole micrograms. */
const sameRatio = 1e-9

/** Leave it as it is: every line is topped up to its plan as far as it can be, and the total comes to what it comes to. */
export function acceptAsIs(problem: RemedyProblem): FeasibleRemedy {
  const finalUg = toppedUp(problem, problem.lines)
  return remedyAt(problem, finalUg)
}

/**
 * Scale the rest: the least factor k at which no line is over its plan, k = max(m_i ÷ (f_i·T0), least total ÷ T0),
 * possible up to min(C ÷ T0, (m_i + s_i) ÷ (f_i·T0)); a locked line adds nothing and so fixes k. Lines that share a
 * stock reach as far as all of them together.
 */
export function scaleTheRest(problem: RemedyProblem): ScaleRemedy {
  const { totalUg, lines } = problem
  const stray = lines.find(({ fraction, massUg }) => fraction === 0 && massUg > 0)
  if (stray) return { feasible: false, why: { code: 'LINE_NOT_IN_FORMULA', id: stray.id }, demandedBy: stray.id }

  const least = leastTotalOf(problem).atUg / totalUg
  const reaches = [...lines.map(reachOf), ...sharedReaches(problem)].filter(({ fraction }) => fraction > 0)
  const ratios = lines
    .filter(({ fraction }) => fraction > 0)
    .map(({ id, fraction, massUg }) => ({ id, ratio: massUg / (fraction * totalUg) }))
  const highest = ratios.reduce((a, b) => (b.ratio > a.ratio ? b : a), { id: '', ratio: 0 })
  const limits = reaches.map((reach) => ({ reach, ratio: (reach.massUg + reach.handUg) / (reach.fraction * totalUg) }))
  const lowest = limits.reduce<{ readonly reach: Reach | null; readonly ratio: number }>(
    (a, b) => (b.ratio < a.ratio ? b : a),
    { reach: null, ratio: mostTotalOf(problem).atUg / totalUg },
  )

  const factor = Math.max(highest.ratio, least)
  if (factor <= lowest.ratio * (1 + sameRatio)) return scaled(problem, factor)
  const why: RemedyRefusal = lowest.reach
    ? reachBinds(lowest.reach, massAtFactor(lowest.reach.fraction, totalUg, factor))
    : tooMuch(problem, Math.round(factor * totalUg))
  const demandedBy = highest.ratio >= least && highest.ratio > 0 ? highest.id : null
  const smaller = { factor: lowest.ratio, totalUg: Math.round(lowest.ratio * totalUg) }
  // A line that is closed with nothing in leaves no batch at all, one that the stirrer does not reach is not mixed.
  const leastUg = Math.max(1, problem.stirsUg?.min ?? 0)
  const isNone = smaller.totalUg < leastUg || highest.ratio > lowest.ratio * (1 + sameRatio)
  return { feasible: false, why, demandedBy, ...(isNone ? {} : { smaller }) }
}

/** Make less: where only the planned total stands in the way of the exact ratio, the largest batch that still has it. */
export function scaleToSmaller(problem: RemedyProblem): ScaleRemedy {
  const answer = scaleTheRest(problem)
  return !answer.feasible && answer.smaller ? scaled(problem, answer.smaller.factor) : answer
}

/**
 * Let q.s. absorb it: the total stays, every other line is topped up to its plan as far as it can be, and the q.s. line
 * takes what remains: x_q = T0 − Σ min(max(m_i, f_i·T0), m_i + s_i), possible where m_q ≤ x_q ≤ m_q + s_q.
 */
export function letQsAbsorb(problem: RemedyProblem): QsRemedy {
  const { totalUg, qsIndex, lines } = problem
  const qs = qsIndex === null ? undefined : lines[qsIndex]
  if (!qs) return { feasible: false, why: { code: 'NO_QS_LINE' }, qsFinalUg: null, outOfRange: [] }

  const others = lines.filter((line) => line !== qs)
  const othersUg = new Map(toppedUp(problem, others).map((massUg, index) => [others[index]?.id, massUg]))
  const qsFinalUg = totalUg - sumOf([...othersUg.values()])
  const finalUg = lines.map((line) => (line === qs ? qsFinalUg : (othersUg.get(line.id) ?? line.massUg)))

  const why = qsBinds(problem, qs, qsFinalUg, leftOf(problem, qs.id, givenTo(lines, finalUg)))
  if (why) return { feasible: false, why, qsFinalUg, outOfRange: outOfRangeAt(problem, finalUg, totalUg) }
  return { ...remedyAt(problem, finalUg), qsFinalUg }
}

function scaled(problem: RemedyProblem, factor: number): ScaleRemedy {
  const finalUg = problem.lines.map((line) => {
    const wantedUg = massAtFactor(line.fraction, problem.totalUg, factor)
    return Math.min(Math.max(wantedUg, line.massUg), line.massUg + stillToHand(line))
  })
  return { ...remedyAt(problem, finalUg), factor }
}

function remedyAt(problem: RemedyProblem, finalUg: readonly Micrograms[]): FeasibleRemedy {
  const totalUg = sumOf(finalUg)
  const additionsUg = problem.lines.map(({ massUg }, index) => (finalUg[index] ?? massUg) - massUg)
  return { feasible: true, totalUg, additionsUg, outOfRange: outOfRangeAt(problem, finalUg, totalUg) }
}

/** Lines at their plan, or as near as what is in and what is left allow; a shared stock serves them in their order. */
function toppedUp(problem: RemedyProblem, lines: readonly RemedyLine[]): Micrograms[] {
  const givenUg = new Map<string, Micrograms>()
  return lines.map((line) => {
    const lackUg = Math.max(0, massAtFactor(line.fraction, problem.totalUg, 1) - line.massUg)
    const giveUg = Math.min(lackUg, stillToHand(line), leftOf(problem, line.id, givenUg))
    givenUg.set(line.id, giveUg)
    return line.massUg + giveUg
  })
}

const givenTo = (lines: readonly RemedyLine[], finalUg: readonly Micrograms[]): Map<string, Micrograms> =>
  new Map(lines.map(({ id, massUg }, index) => [id, (finalUg[index] ?? massUg) - massUg]))

/** What the stocks that a line shares leave it, after what the others were given. */
function leftOf({ couplings = [] }: RemedyProblem, id: string, givenUg: ReadonlyMap<string, Micrograms>): Micrograms {
  const left = couplings.map((coupling) => {
    if (coupling.kind !== 'stock' || !coupling.lines.includes(id)) return Number.POSITIVE_INFINITY
    const others = coupling.lines.filter((line) => line !== id)
    return coupling.stockUg - sumOf(others.map((line) => givenUg.get(line) ?? 0))
  })
  return Math.min(...left, Number.POSITIVE_INFINITY)
}

function qsBinds(
  problem: RemedyProblem,
  qs: RemedyLine,
  qsFinalUg: Micrograms,
  leftUg: Micrograms,
): RemedyRefusal | undefined {
  if (problem.totalUg > mostTotalOf(problem).atUg) return tooMuch(problem, problem.totalUg)
  if (qsFinalUg < qs.massUg) return { code: 'QS_ALREADY_PAST', id: qs.id, pastUg: qs.massUg - qsFinalUg }
  const reach = reachOf(qs)
  if (qsFinalUg > qs.massUg + reach.handUg) return reachBinds(reach, qsFinalUg)
  return qsFinalUg > qs.massUg + leftUg
    ? { code: 'STOCK_TOO_SHORT', id: qs.id, neededUg: qsFinalUg - qs.massUg, stockUg: leftUg }
    : undefined
}

/** What a line, or lines that share a stock, have in and can still take. */
interface Reach {
  readonly id: string
  readonly fraction: number
  readonly massUg: Micrograms
  readonly handUg: Micrograms
  readonly locked: boolean
}

const reachOf = (line: RemedyLine): Reach => ({
  id: line.id,
  fraction: line.fraction,
  massUg: line.massUg,
  handUg: stillToHand(line),
  locked: line.locked,
})

function sharedReaches({ lines, couplings = [] }: RemedyProblem): Reach[] {
  return couplings.flatMap((coupling) => {
    if (coupling.kind !== 'stock') return []
    const members = lines.filter(({ id }) => coupling.lines.includes(id))
    const fraction = sumOf(members.map((line) => line.fraction))
    const massUg = sumOf(members.map((line) => line.massUg))
    return [{ id: coupling.id, fraction, massUg, handUg: coupling.stockUg, locked: false }]
  })
}

/** What keeps a line from reaching a mass. */
function reachBinds({ id, massUg, handUg, locked }: Reach, wantedUg: Micrograms): RemedyRefusal {
  const neededUg = wantedUg - massUg
  return locked ? { code: 'LINE_LOCKED', id, neededUg } : { code: 'STOCK_TOO_SHORT', id, neededUg, stockUg: handUg }
}

/** What a fraction weighs at a multiple of the planned total. */
const massAtFactor = (fraction: number, totalUg: Micrograms, factor: number): Micrograms =>
  factor === 1 ? fractionOf(totalUg, ratioOf(fraction), 1) : Math.round(factor * fraction * totalUg)
