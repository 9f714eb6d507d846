import { compositionAsMade } from '../trade/composition'
import type { SharedLimit } from './formula'
import { assayOf, countsFor } from './shared-limits'
import type { BatchState } from './state'

/** A limit over several lines, with what the batch comes to as made; that is left out while nothing is in. */
export interface LimitRow {
  readonly limit: SharedLimit
  readonly asMade?: number
  readonly verdict: 'within' | 'outside' | 'none'
}

/** What was added without being planned counts with what its material says. */
export function limitRows(state: BatchState): readonly LimitRow[] {
  const asMade = compositionAsMade(state.ledger)
  const materials = new Map(state.header.materials.map((material) => [material.id, material]))
  const materialOf = (component: string) => {
    const strange = state.unplanned.get(component)?.body
    return state.plan.lines.get(component)?.material ?? strange?.material ?? materials.get(strange?.materialId ?? '')
  }
  return (state.header.revision.sharedLimits ?? []).map((limit): LimitRow => {
    if (asMade.size === 0) return { limit, verdict: 'none' }
    let share = 0
    for (const [component, fraction] of asMade) {
      const material = materialOf(component)
      const planned = state.plan.lines.get(component)
      if (material) share += fraction * countsFor(material, limit.of, planned && assayOf(planned))
    }
    const { min = 0, max = 1 } = limit
    const isWithin = share >= min - slack && share <= max + slack
    return { limit, asMade: share, verdict: isWithin ? 'within' : 'outside' }
  })
}

/** A microgram of a kilogram is no departure. */
const slack = 1e-9
