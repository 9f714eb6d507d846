import type { Micrograms } from './mass'
import { type Coupling, type Limit, type RemedyProblem, stillToHand, sumOf } from './remedy-model'

/** A limit that a remedy breaks, and by how much. */
export type BrokenLimit = Limit & { readonly byUg: Micrograms }

/**
 * Every limit that additions break, in the order of the lines, then the couplings, then the total: nothing is taken
 * out, no more is added than there is, every fraction lies in its range, the total fits. Empty for what keeps them all.
 */
export function verifyRemedy(problem: RemedyProblem, additionsUg: readonly Micrograms[]): readonly BrokenLimit[] {
  const { lines, couplings = [], totalUg: plannedUg, minTotalUg = plannedUg, capacityUg, stirsUg } = problem
  const finalUg = lines.map(({ massUg }, index) => massUg + (additionsUg[index] ?? 0))
  const totalUg = sumOf(finalUg)
  const slack = slackUg(problem)
  const past = (limit: Limit, byUg: number, allowedUg: number): BrokenLimit[] =>
    byUg > allowedUg ? [{ ...limit, byUg }] : []
  return [
    ...lines.flatMap((line, index) => {
      const { id, low, high, locked, massUg } = line
      const atUg = finalUg[index] ?? massUg
      return [
        ...past({ limit: 'in', id }, massUg - atUg, 0),
        ...past({ limit: locked ? 'locked' : 'stock', id }, atUg - massUg - stillToHand(line), 0),
        ...past({ limit: 'low', id }, low * totalUg - atUg, slack),
        ...past({ limit: 'high', id }, atUg - high * totalUg, slack),
      ]
    }),
    ...couplings.flatMap((coupling) =>
      past({ limit: 'shared', id: coupling.id }, excessOf(problem, coupling, finalUg), slack + sizeOf(coupling)),
    ),
    ...past({ limit: 'capacity' }, totalUg - capacityUg, slack),
    ...past({ limit: 'least-total' }, minTotalUg - totalUg, slack),
    ...past({ limit: 'stirs-least' }, (stirsUg?.min ?? 0) - totalUg, slack),
    ...past({ limit: 'stirs-most' }, totalUg - (stirsUg?.max ?? totalUg), slack),
  ]
}

/**
 * Masses are whole micrograms, so a limit is met to two of them; and sums of limits are reckoned in floating point to
 * a billionth of the batch.
 */
export const slackUg = ({ totalUg }: RemedyProblem): Micrograms => 2 + 1e-9 * totalUg

/** The lines out of their ranges and the couplings broken at these final masses. */
export function outOfRangeAt(problem: RemedyProblem, finalUg: readonly Micrograms[], totalUg: Micrograms): string[] {
  const slack = slackUg(problem)
  const lines = problem.lines.filter(({ low, high }, index) => {
    const atUg = finalUg[index] ?? 0
    return atUg < low * totalUg - slack || atUg > high * totalUg + slack
  })
  const broken = (problem.couplings ?? []).filter(
    (coupling) => excessOf(problem, coupling, finalUg) > slack + sizeOf(coupling),
  )
  return [...lines, ...broken].map(({ id }) => id)
}

/**
 * The limits on which these final masses stand, so that nothing better is found without loosening one: what one line
 * tells the person about a remedy. Of a line that holds more than its plan only because nothing comes out: *in*.
 */
export function bindingAt(problem: RemedyProblem, finalUg: readonly Micrograms[]): readonly Limit[] {
  const { lines, couplings = [], totalUg: plannedUg, minTotalUg = plannedUg, capacityUg, stirsUg } = problem
  const totalUg = sumOf(finalUg)
  const slack = slackUg(problem)
  const at = (value: number, limitUg: number): boolean => Math.abs(value - limitUg) <= slack
  return [
    ...lines.flatMap((line, index): Limit[] => {
      const { id, low, high, fraction, massUg } = line
      const atUg = finalUg[index] ?? massUg
      if (at(atUg, high * totalUg)) return [{ limit: 'high', id }]
      if (low > 0 && at(atUg, low * totalUg)) return [{ limit: 'low', id }]
      if (atUg < fraction * totalUg - slack && at(atUg, massUg + stillToHand(line)))
        return [{ limit: line.locked ? 'locked' : 'stock', id }]
      return atUg > fraction * totalUg + slack && at(atUg, massUg) ? [{ limit: 'in', id }] : []
    }),
    ...couplings
      .filter((coupling) => excessOf(problem, coupling, finalUg) >= -slack - sizeOf(coupling))
      .map(({ id }): Limit => ({ limit: 'shared', id })),
    ...(at(totalUg, capacityUg) ? [{ limit: 'capacity' } as const] : []),
    ...(at(totalUg, minTotalUg) ? [{ limit: 'least-total' } as const] : []),
    ...(stirsUg !== undefined && at(totalUg, stirsUg.min) ? [{ limit: 'stirs-least' } as const] : []),
    ...(stirsUg !== undefined && at(totalUg, stirsUg.max) ? [{ limit: 'stirs-most' } as const] : []),
  ]
}

/** Each line of a coupling may be rounded by a microgram. */
const sizeOf = (coupling: Coupling): number => (coupling.kind === 'stock' ? coupling.lines : coupling.parts).length

/** How far past its limit a coupling is; below zero, how much room it leaves. */
function excessOf({ lines }: RemedyProblem, coupling: Coupling, finalUg: readonly Micrograms[]): Micrograms {
  const indexOf = (id: string): number => lines.findIndex((line) => line.id === id)
  if (coupling.kind === 'stock') {
    const members = coupling.lines.map(indexOf)
    return sumOf(members.map((index) => (finalUg[index] ?? 0) - (lines[index]?.massUg ?? 0))) - coupling.stockUg
  }
  const totalUg = sumOf(finalUg)
  const heldUg = shareAt({ lines }, coupling, finalUg) * totalUg
  return Math.max(coupling.low * totalUg - heldUg, heldUg - coupling.high * totalUg)
}

/** What a limit over several lines is held against, of these final masses: Σ share_i · x_i ÷ Σ x_i. */
export function shareAt(
  { lines }: Pick<RemedyProblem, 'lines'>,
  { parts }: Extract<Coupling, { kind: 'share' }>,
  finalUg: readonly Micrograms[],
): number {
  const totalUg = sumOf(finalUg)
  if (totalUg === 0) return 0
  const heldUg = sumOf(parts.map((part) => part.share * (finalUg[lines.findIndex(({ id }) => id === part.line)] ?? 0)))
  return heldUg / totalUg
}
