import type { Revision } from './formula'

/** What a revision states about the density of its product, g/mL: the middle of that check's limits, or the one it has. */
export function productDensity({ specification }: Revision): number | null {
  const { min, max } = specification.find(({ property }) => property === 'density')?.limits ?? {}
  return min !== undefined && max !== undefined ? (min + max) / 2 : (min ?? max ?? null)
}
