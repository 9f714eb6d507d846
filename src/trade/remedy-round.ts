import { type Micrograms, roundDownToStep, roundToStep } from './mass'
import { type BrokenLimit, slackUg, verifyRemedy } from './remedy-check'
import { type RemedyLine, type RemedyProblem, stillToHand, sumOf, toleranceOf } from './remedy-model'

/** Additions that balances can show. `breaks` are the limits that only the rounding breaks. */
export interface RoundedRemedy {
  readonly additionsUg: readonly Micrograms[]
  readonly totalUg: Micrograms
  /** The line that takes what the roundings come to; null where none can still take any. */
  readonly residual: string | null
  readonly breaks: readonly BrokenLimit[]
}

/**
 * Rounds additions to the steps of the lines' balances: the nearest step that keeps the line in its range and within
 * what is left. What the roundings come to goes to q.s., else to the line of the largest tolerance that breaks no limit by
 * it, on its own steps: the total moves by at most one and a half of them.
 */
export function roundRemedy(
  problem: RemedyProblem,
  additionsUg: readonly Micrograms[],
  stepsUg: readonly Micrograms[],
): RoundedRemedy {
  const { lines } = problem
  const slack = slackUg(problem)
  const totalUg = sumOf(lines.map(({ massUg }, index) => massUg + (additionsUg[index] ?? 0)))
  const rounded = lines.map((line, index) => onStep(line, additionsUg[index] ?? 0, stepsUg[index] ?? 1, totalUg, slack))
  const before = new Set(verifyRemedy(problem, additionsUg).map(keyOf))
  const attempt = (candidate: readonly Micrograms[], residual: string | null, stepUg: Micrograms): Attempt => ({
    additionsUg: candidate,
    residual,
    // A total that the balance cannot tell from the least one is the least one.
    breaks: verifyRemedy(problem, candidate).filter(
      (broken) => !before.has(keyOf(broken)) && (!leastOfTotal.has(broken.limit) || broken.byUg >= stepUg),
    ),
  })

  const restUg = sumOf(additionsUg) - sumOf(rounded)
  let best: Attempt | undefined
  for (const { line, index } of takers(problem)) {
    const stepUg = stepsUg[index] ?? 1
    const nearestUg = roundToStep((rounded[index] ?? 0) + restUg, stepUg)
    for (const addUg of [nearestUg, nearestUg + stepUg, nearestUg - stepUg]) {
      if (addUg < 0 || addUg > stillToHand(line)) continue
      const tried = attempt(rounded.with(index, addUg), line.id, stepUg)
      if (!best || tried.breaks.length < best.breaks.length) best = tried
      if (tried.breaks.length === 0) return answerOf(problem, tried)
    }
  }
  return answerOf(problem, best ?? attempt(rounded, null, 1))
}

const leastOfTotal: ReadonlySet<BrokenLimit['limit']> = new Set(['least-total', 'stirs-least'])

interface Attempt {
  readonly additionsUg: readonly Micrograms[]
  readonly residual: string | null
  readonly breaks: readonly BrokenLimit[]
}

const answerOf = ({ lines }: RemedyProblem, attempt: Attempt): RoundedRemedy => ({
  ...attempt,
  totalUg: sumOf(lines.map(({ massUg }) => massUg)) + sumOf(attempt.additionsUg),
})

/** The nearest step that is there and keeps the line in its range; where none does, the nearest that is there. */
function onStep(
  line: RemedyLine,
  addUg: Micrograms,
  stepUg: Micrograms,
  totalUg: Micrograms,
  slack: Micrograms,
): Micrograms {
  const nearestUg = roundToStep(addUg, stepUg)
  const downUg = roundDownToStep(addUg, stepUg)
  const there = [nearestUg, downUg, downUg + stepUg].filter((each) => each <= stillToHand(line))
  const keeps = (each: Micrograms): boolean => {
    const massUg = line.massUg + each
    return massUg >= line.low * totalUg - slack && massUg <= line.high * totalUg + slack
  }
  return there.find(keeps) ?? there[0] ?? downUg
}

interface Taker {
  readonly line: RemedyLine
  readonly index: number
}

/** Where the widest lines cannot take what the roundings come to, a narrower one is not going to. */
const mostTakers = 8

/** The lines that can still take any: q.s. first, then by tolerance, ties by name. */
function takers({ lines, qsIndex }: RemedyProblem): readonly Taker[] {
  const width = ({ line, index }: Taker): number => (index === qsIndex ? Number.POSITIVE_INFINITY : toleranceOf(line))
  return lines
    .map((line, index) => ({ line, index }))
    .filter(({ line }) => stillToHand(line) > 0)
    .sort((a, b) => (width(a) === width(b) ? (a.line.id < b.line.id ? -1 : 1) : width(b) - width(a)))
    .slice(0, mostTakers)
}

const keyOf = (broken: BrokenLimit): string => ('id' in broken ? `${broken.limit} ${broken.id}` : broken.limit)
