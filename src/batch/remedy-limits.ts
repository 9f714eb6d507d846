import type { Micrograms } from '../trade/mass'
import { relativeTolerance } from '../trade/relative-tolerance'
import type { Coupling } from '../trade/remedy-model'
import type { Material } from './catalogue'
import type { SharedLimit } from './formula'
import type { PlannedLine } from './plan'
import { assayOf, countsFor } from './shared-limits'
import type { BatchState } from './state'

/** What a line may be in the finished product, and who says so. */
export interface Limits {
  readonly low: number
  readonly high: number
  readonly from: 'formula' | 'use level' | 'tolerance' | 'shared' | 'none'
}

/**
 * The range of a line: the formula's own where it states one, narrowed by the material's use level; else the use
 * level; else the weighing tolerance round the planned fraction, never narrower than what the balance tells. As-needed
 * lines have their own least and most. `fraction` is the planned one as it counts now.
 */
export function limitsOf(planned: PlannedLine, fraction = planned.fraction): Limits {
  const { amount, range, tolerance } = planned.line
  if (planned.phase === '+') return limitsBeside(planned)
  if (amount.kind === 'as-needed') return { low: amount.min, high: amount.max, from: 'formula' }
  if (amount.kind === 'qs' && !range) return { low: 0, high: 1, from: 'formula' }
  const use = planned.material.useLevel
  if (range) {
    const low = Math.max(range.min, use?.min ?? 0)
    const high = Math.min(range.max, use?.max ?? 1)
    return { low, high, from: high < range.max || low > range.min ? 'use level' : 'formula' }
  }
  const readable = planned.targetUg > 0 ? planned.balance.stepUg / planned.targetUg : 0
  const relative = Math.max(relativeTolerance(planned.targetUg, tolerance), readable)
  const low = Math.max(0, fraction * (1 - relative))
  const high = Math.min(1, fraction * (1 + relative))
  return use && use.max < high ? { low, high: use.max, from: 'use level' } : { low, high, from: 'tolerance' }
}

/** Of what is not in the formula only its use level says how much may be. */
const limitsBeside = ({ material }: PlannedLine): Limits => ({
  low: 0,
  high: material.useLevel?.max ?? 1,
  from: material.useLevel ? 'use level' : 'none',
})

/** What is left of each lot; null where it is not known. */
export type OnHand = ReadonlyMap<string, Micrograms> | null

/** What the lots of a line can still give; null where that is not known, or where it has none. */
export function stockOf(state: BatchState, line: string, onHand: OnHand): Micrograms | null {
  const lots = state.lotsOfLine.get(line) ?? []
  if (onHand === null || lots.length === 0 || lots.some((lot) => !onHand.has(lot))) return null
  return lots.reduce((sum, lot) => sum + Math.max(0, onHand.get(lot) ?? 0), 0)
}

/** What is in the batch or is to come: lines of the plan, and foreign mass whose material is known. */
interface Counted {
  readonly id: string
  readonly material: Material
  readonly assay?: number
}

/** Limits over several lines: the formula's own, one material on two lines, lots that two lines draw on. */
export function couplingsOf(state: BatchState, onHand: OnHand): readonly Coupling[] {
  const planned = [...state.plan.lines.values()]
  const counted = [...planned.map(countedOf), ...strangersOf(state)]
  const shared = (state.header.revision.sharedLimits ?? []).map((limit) => shareOf(limit, counted))
  const ids = new Set(counted.map(({ material }) => material.id))
  const several = [...ids].map((id) => counted.filter(({ material }) => material.id === id)).filter(isSeveral)
  const twice = several.map((group) => planned.filter(({ line }) => group.some(({ id }) => id === line.id)))
  const stocks = twice.filter(isSeveral).flatMap((group) => commonStock(state, group, onHand))
  return [...shared, ...several.flatMap(levelOf), ...stocks].filter(
    (coupling) => coupling.kind === 'stock' || coupling.parts.length > 0,
  )
}

function countedOf(planned: PlannedLine): Counted {
  const assay = assayOf(planned)
  const { line, material } = planned
  return { id: line.id, material, ...(assay === undefined ? {} : { assay }) }
}

const isSeveral = (group: readonly unknown[]): boolean => group.length > 1

const strangersOf = (state: BatchState): readonly Counted[] =>
  [...state.unplanned].flatMap(([id, { body }]) => {
    const material = body.material ?? state.header.materials.find((each) => each.id === body.materialId)
    return material ? [{ id, material }] : []
  })

function shareOf({ id, of, min = 0, max = 1 }: SharedLimit, counted: readonly Counted[]): Coupling {
  const parts = counted
    .map((each) => ({ line: each.id, share: countsFor(each.material, of, each.assay) }))
    .filter(({ share }) => share > 0)
  return { kind: 'share', id, parts, low: min, high: max }
}

function levelOf(group: readonly Counted[]): readonly Coupling[] {
  const material = group[0]?.material
  const parts = group.map(({ id }) => ({ line: id, share: 1 }))
  if (material?.useLevel === undefined) return []
  return [{ kind: 'share', id: material.id, parts, low: 0, high: material.useLevel.max }]
}

function commonStock(state: BatchState, group: readonly PlannedLine[], onHand: OnHand): readonly Coupling[] {
  const lots = new Set(group.flatMap(({ line }) => state.lotsOfLine.get(line.id) ?? []))
  if (onHand === null || lots.size === 0 || [...lots].some((lot) => !onHand.has(lot))) return []
  const stockUg = [...lots].reduce((sum, lot) => sum + Math.max(0, onHand.get(lot) ?? 0), 0)
  return [{ kind: 'stock', id: group[0]?.material.id ?? '', lines: group.map(({ line }) => line.id), stockUg }]
}
