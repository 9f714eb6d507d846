import type { Micrograms } from '../trade/mass'
import type { RemedyProblem } from '../trade/remedy'
import { bindingAt, outOfRangeAt, shareAt } from '../trade/remedy-check'
import { type Limits, limitsOf } from './remedy-limits'
import type { BatchState } from './state'

/** One line of a finished composition, or a limit over several lines: as it would end, against its limits. */
export interface FinishedRow {
  readonly line: string
  readonly name: string
  readonly before: number
  readonly after: number
  readonly low: number
  readonly high: number
  readonly from: Limits['from']
  readonly breaks: boolean
  /** It stands on a limit: a better way would have to loosen it. */
  readonly binds: boolean
}

interface Asked {
  readonly state: BatchState
  readonly about: string
  readonly problem: RemedyProblem
  readonly leftUg: readonly Micrograms[]
}

/** The line that it is about, then what breaks, the worst first, then what stands on its limit. */
export const rowsOf = (asked: Asked, finalUg: readonly Micrograms[]): FinishedRow[] =>
  allRowsOf(asked, finalUg)
    .filter((row) => row.breaks || row.binds || row.line === asked.about)
    .sort(inOrder(asked.about))

/** How much is left to the nearer of its limits, as a fraction of the finished product; below zero, how far past it. */
export const spareOf = ({ after, low, high }: FinishedRow): number => Math.min(high - after, after - low)

/** Every line in the order of the formula, then every limit over several lines. */
export function allRowsOf({ state, problem, leftUg }: Asked, finalUg: readonly Micrograms[]): FinishedRow[] {
  const beforeTotalUg = sum(leftUg)
  const totalUg = sum(finalUg)
  const broken = new Set(outOfRangeAt(problem, finalUg, totalUg))
  const binding = new Set(bindingAt(problem, finalUg).flatMap((limit) => (isOfRange(limit) ? [limit.id] : [])))
  const rows = problem.lines.map((line, index): FinishedRow => {
    const { name, from } = sourceOf(state, line.id, line.fraction)
    const ends = { before: (leftUg[index] ?? 0) / beforeTotalUg, after: (finalUg[index] ?? 0) / totalUg }
    const { id, low, high } = line
    return { line: id, name, ...ends, low, high, from, breaks: broken.has(id), binds: low < high && binding.has(id) }
  })
  const shared = (problem.couplings ?? []).flatMap((coupling): FinishedRow[] => {
    if (coupling.kind !== 'share') return []
    const { id, low, high } = coupling
    const name = nameOfShared(state, id)
    const ends = { before: shareAt(problem, coupling, leftUg), after: shareAt(problem, coupling, finalUg) }
    return [{ line: id, name, ...ends, low, high, from: 'shared', breaks: broken.has(id), binds: binding.has(id) }]
  })
  return [...rows, ...shared]
}

/** What a limit over several lines is called. */
export function nameOfShared(state: BatchState, id: string): string {
  const limit = state.header.revision.sharedLimits?.find((each) => each.id === id)
  return limit?.name ?? state.header.materials.find((material) => material.id === id)?.name ?? id
}

function sourceOf(state: BatchState, id: string, fraction: number): { name: string; from: Limits['from'] } {
  const planned = state.plan.lines.get(id)
  if (planned) return { name: planned.material.name, from: limitsOf(planned, fraction).from }
  const body = state.unplanned.get(id)?.body
  return { name: body?.name ?? id, from: body?.most === undefined ? 'none' : 'use level' }
}

const isOfRange = (limit: {
  readonly limit: string
  readonly id?: string
}): limit is { readonly limit: string; readonly id: string } => ['low', 'high', 'shared'].includes(limit.limit)

const inOrder =
  (about: string) =>
  (a: FinishedRow, b: FinishedRow): number =>
    Number(b.line === about) - Number(a.line === about) || Number(b.breaks) - Number(a.breaks) || excess(b) - excess(a)

/** How far past its limit, as a multiple of it; of a line that is not there at all, the most. */
function excess({ after, low, high }: FinishedRow): number {
  const under = low === 0 ? 0 : after === 0 ? Number.MAX_VALUE : low / after
  return Math.max(high === 0 ? 0 : after / high, under)
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
