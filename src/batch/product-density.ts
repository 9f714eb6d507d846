import type { Revision } from './formula'
import { unitOf } from './how-read'

/**
 * What a revision states about the density of its product, g/mL: the middle of that check's limits, or the one it has.
 * Null where it states none, or in a unit that would have to be guessed at.
 */
export function productDensity({ specification }: Revision): number | null {
  const check = specification.find(({ property }) => property === 'density')
  if (check === undefined || !sameSize.has(unitOf(check) ?? '')) return null
  const { min, max } = check.limits ?? {}
  return min !== undefined && max !== undefined ? (min + max) / 2 : (min ?? max ?? null)
}

/** A gram in a millilitre by its other names. */
const sameSize: ReadonlySet<string> = new Set(['g/mL', 'g/ml', 'g/cm³', 'g/cm3', 'kg/L', 'kg/l'])
