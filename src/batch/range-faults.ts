import type { SharedLimit } from './formula'
import { plannedShare, type SharedLine } from './shared-limits'

/**
 * What a formula asks of itself that cannot all hold, so that every remedy would fail on it. `about` is the line, or
 * the limit over several lines. Shares of the finished product, 0–1.
 */
export type RangeFault = { readonly about: string; readonly min: number; readonly max: number } & (
  | { readonly code: 'RANGE_CONTRADICTORY' | 'SHARED_CONTRADICTORY' }
  /** The range of the formula and the use level of the material have nothing in common. */
  | { readonly code: 'RANGE_AGAINST_USE'; readonly use: { readonly min: number; readonly max: number } }
  /** The formula itself lies outside. */
  | { readonly code: 'RANGE_EXCLUDES' | 'SHARED_EXCLUDES'; readonly share: number }
)

/** Lines in their order, then limits over several lines; of each the gravest alone. */
export function rangeFaults(
  lines: readonly SharedLine[],
  sharedLimits: readonly SharedLimit[] = [],
): readonly RangeFault[] {
  return [...lines.flatMap(lineFault), ...sharedLimits.flatMap((limit) => sharedFault(limit, lines))]
}

/** What binary sums can be off by. */
const same = 1e-9

function lineFault({ line, fraction: share, material }: SharedLine): RangeFault[] {
  const { range, id: about } = line
  if (range === undefined) return []
  const { min, max } = range
  if (min > max) return [{ code: 'RANGE_CONTRADICTORY', about, min, max }]
  const use = material.useLevel
  if (use && (use.min > max + same || use.max < min - same))
    return [{ code: 'RANGE_AGAINST_USE', about, min, max, use: { min: use.min, max: use.max } }]
  return share < min - same || share > max + same ? [{ code: 'RANGE_EXCLUDES', about, min, max, share }] : []
}

function sharedFault(limit: SharedLimit, lines: readonly SharedLine[]): RangeFault[] {
  const { id: about, min = 0, max = 1 } = limit
  if (min > max) return [{ code: 'SHARED_CONTRADICTORY', about, min, max }]
  const share = plannedShare(limit, lines)
  return share < min - same || share > max + same ? [{ code: 'SHARED_EXCLUDES', about, min, max, share }] : []
}
