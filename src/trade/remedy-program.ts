import { type Coupling, type RemedyProblem, sumOf } from './remedy-model'
import { type Scaled, same } from './remedy-scaled'
import type { Program, Row } from './solve'

/**
 * A remedy problem as a linear program in units of the planned total. Variables: an addition for each line, then the
 * total M, then the worst departure t, then each line's own departure in tolerances.
 */
export interface RemedyProgram {
  readonly problem: RemedyProblem
  readonly scaled: Scaled
  readonly rows: readonly Row[]
}

/** Nothing beyond what is left, every fraction in its range unless ranges may break, the couplings, and the total. */
export function programOf(
  problem: RemedyProblem,
  scaled: Scaled,
  total: { readonly least: number; readonly most: number },
  ranges: 'hard' | 'soft',
): RemedyProgram {
  const count = scaled.ids.length
  const { held, reach, low, high } = scaled
  const rows: Row[] = [
    {
      coefficients: new Map([...held.map((_, line) => [line, 1] as const), [count, -1]]),
      ...exactly(-scaled.contents),
    },
    { coefficients: new Map([[count, 1]]), ...total },
  ]
  for (const [line, mass] of held.entries()) {
    const room = (reach[line] ?? mass) - mass
    if (Number.isFinite(room)) rows.push({ coefficients: new Map([[line, 1]]), most: room })
    if (ranges === 'soft') continue
    // A stock that was rounded to the microgram is not to miss the range of its line by that.
    rows.push({
      coefficients: new Map([
        [line, 1],
        [count, -(low[line] ?? 0) * (1 - same)],
      ]),
      least: -mass,
    })
    rows.push({
      coefficients: new Map([
        [line, 1],
        [count, -(high[line] ?? 1) * (1 + same)],
      ]),
      most: -mass,
    })
  }
  const couplings = (problem.couplings ?? []).flatMap((coupling) => couplingRows(problem, scaled, coupling))
  return { problem, scaled, rows: [...rows, ...couplings] }
}

export function leastTotalOf({ scaled, rows }: RemedyProgram): Program {
  const count = scaled.ids.length
  return { variables: count + 1, minimise: new Map([[count, 1]]), rows }
}

export function leastCostOf({ problem, scaled, rows }: RemedyProgram): Program {
  const prices = problem.lines.map(({ costPerKg = 0 }, line) => [line, costPerKg * (problem.totalUg / 1e9)] as const)
  return { variables: scaled.ids.length + 1, minimise: new Map(prices), rows }
}

/** At a known total, |x_i − f_i·M| ≤ t·tol_i·M for every line. */
export function leastWorstOf({ scaled, rows }: RemedyProgram, total: number): Program {
  const worst = scaled.ids.length + 1
  return {
    variables: worst + 1,
    minimise: new Map([[worst, 1]]),
    rows: [...rows, ...awayRows(scaled, total, () => worst)],
  }
}

/** At a known total and with no departure above the worst, the least sum of departures. */
export function leastSumOf(program: RemedyProgram, total: number, worst: number): Program {
  const { scaled } = program
  const first = scaled.ids.length + 2
  const own = scaled.ids.map((_, line) => first + line)
  return {
    variables: first + scaled.ids.length,
    minimise: new Map(own.map((variable) => [variable, 1])),
    rows: [
      ...program.rows,
      ...awayRows(scaled, total, (line) => first + line),
      ...own.map((variable): Row => ({ coefficients: new Map([[variable, 1]]), most: worst })),
    ],
  }
}

/** The worst departure of masses at a total, in tolerances. */
export const worstOf = ({ target, tolerance }: Scaled, masses: readonly number[], total: number): number =>
  Math.max(
    ...masses.map((mass, line) => Math.abs(mass - (target[line] ?? 0) * total) / ((tolerance[line] ?? 1) * total)),
  )

const exactly = (value: number): { readonly least: number; readonly most: number } => ({ least: value, most: value })

/** Rows in tolerances, so that what the solver takes for zero is as small beside a narrow tolerance as a wide one. */
function awayRows({ held, target, tolerance }: Scaled, total: number, departureOf: (line: number) => number): Row[] {
  return held.flatMap((mass, line): Row[] => {
    const unit = (tolerance[line] ?? 1) * total
    const wanted = ((target[line] ?? 0) * total - mass) / unit
    const departure = departureOf(line)
    return [
      {
        coefficients: new Map([
          [line, 1 / unit],
          [departure, -1],
        ]),
        most: wanted,
      },
      {
        coefficients: new Map([
          [line, 1 / unit],
          [departure, 1],
        ]),
        least: wanted,
      },
    ]
  })
}

function couplingRows({ lines, totalUg }: RemedyProblem, { held }: Scaled, coupling: Coupling): Row[] {
  const count = lines.length
  const indexOf = (id: string): number => lines.findIndex((line) => line.id === id)
  if (coupling.kind === 'stock') {
    const coefficients = new Map(coupling.lines.map((id) => [indexOf(id), 1]))
    return [{ coefficients, most: coupling.stockUg / totalUg }]
  }
  const shares = new Map<number, number>()
  for (const { line, share } of coupling.parts) shares.set(indexOf(line), (shares.get(indexOf(line)) ?? 0) + share)
  const inside = sumOf([...shares].map(([line, share]) => share * (held[line] ?? 0)))
  return [
    { coefficients: new Map([...shares, [count, -coupling.low]]), least: -inside },
    { coefficients: new Map([...shares, [count, -coupling.high]]), most: -inside },
  ]
}
