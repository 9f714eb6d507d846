import type { Tolerance } from './amount'
import type { Micrograms } from './mass'
import { usualTolerance } from './tolerance'

/** A tolerance as a fraction of its target, which is how the balance's smallest reliable mass is reckoned. */
export function relativeTolerance(targetUg: Micrograms, tolerance: Tolerance | undefined): number {
  const stated = tolerance ?? usualTolerance
  return 'relative' in stated ? stated.relative : stated.absoluteUg / targetUg
}
