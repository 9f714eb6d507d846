/** A bar of a waterfall: from one level to another. A *whole* begins at nothing. */
export interface Fall {
  readonly kind: 'whole' | 'step'
  readonly from: number
  readonly to: number
}

export interface FallScale {
  /** The level at the left end of the bars. */
  readonly base: number
  readonly isCut: boolean
  readonly at: (level: number) => number
}

/**
 * Where levels stand between 0 and `widthPx`. Steps that are small beside the whole would be hairs: then the bars are
 * cut, and begin at a level below the lowest step, with a quarter of the steps' span to its left.
 */
export function fallScale(falls: readonly Fall[], widthPx: number): FallScale {
  const levels = falls.flatMap(({ kind, from, to }) => (kind === 'whole' ? [to] : [from, to]))
  const top = Math.max(...levels, 1)
  const low = Math.min(...levels)
  const isCut = low > top * 0.5
  const base = isCut ? Math.max(0, low - Math.max(top - low, top * 0.02) * 0.25) : Math.min(0, low)
  return { base, isCut, at: (level) => ((level - base) / (top - base)) * widthPx }
}
