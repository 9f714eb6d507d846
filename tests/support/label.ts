import type { Portion } from '../../src/batch/allergens'
import { labelOf } from '../../src/batch/label-draft'

/** Every INCI name of what these make, with its share. */
export function inciParts(portions: readonly Portion[]): ReadonlyMap<string, number> {
  const { above, upToOne, colourants } = labelOf(portions, 'leave-on')
  return new Map([...above, ...upToOne, ...colourants].map(({ name, fraction }) => [name, fraction]))
}
