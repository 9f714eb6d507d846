/** How two things go together by their ranks, and over how many pairs that is told. */
export interface RankCorrelation {
  readonly rho: number
  readonly n: number
}

/** Fewer pairs than these have hardly any order to speak of. */
const fewest = 4

/**
 * Spearman's rank correlation over the pairs that are whole. Null where there are too few, or where one of the two never
 * changes: what is constant goes with nothing.
 */
export function spearman(xs: readonly (number | null)[], ys: readonly (number | null)[]): RankCorrelation | null {
  const pairs = xs.flatMap((x, at) => {
    const y = ys[at] ?? null
    return x === null || y === null || !Number.isFinite(x) || !Number.isFinite(y) ? [] : [[x, y] as const]
  })
  if (pairs.length < fewest) return null
  const rho = pearson(ranksOf(pairs.map(([x]) => x)), ranksOf(pairs.map(([, y]) => y)))
  return rho === null ? null : { rho, n: pairs.length }
}

/** 1 for the least; equal values share the mean of their ranks. */
export function ranksOf(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b)
  const first = new Map<number, number>()
  const last = new Map<number, number>()
  sorted.forEach((value, at) => {
    if (!first.has(value)) first.set(value, at + 1)
    last.set(value, at + 1)
  })
  return values.map((value) => ((first.get(value) ?? 0) + (last.get(value) ?? 0)) / 2)
}

/** Ranks are halves of whole numbers, so that every sum here is exact. */
function pearson(xs: readonly number[], ys: readonly number[]): number | null {
  const n = xs.length
  const mean = (n + 1) / 2
  let [xx, yy, xy] = [0, 0, 0]
  xs.forEach((x, at) => {
    const y = ys[at] ?? 0
    xx += (x - mean) ** 2
    yy += (y - mean) ** 2
    xy += (x - mean) * (y - mean)
  })
  return xx === 0 || yy === 0 ? null : Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy)))
}

/**
 * What the size of a rank correlation of two things that have nothing to do with each other reaches in one of twenty
 * cases at the most, two-sided, by how many pairs there are. Null where even 1 is no rarer than that.
 */
export function chanceOf(n: number): number | null {
  if (n < 5) return null
  const squares = rare[n - 5]
  return squares === undefined ? 1.96 / Math.sqrt(n - 1) : 1 - (6 * squares) / (n ** 3 - n)
}

/**
 * From five pairs to twelve, without ties: the largest sum of squared differences of ranks that at most one in forty of
 * all orders stays at or below. Counted over every order of n things; past twelve the normal approximation is near enough.
 */
const rare = [0, 4, 12, 22, 36, 58, 84, 118] as const
