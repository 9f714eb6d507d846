import type { Reconciliation } from './composition'
import type { Micrograms } from './mass'

export type LossKind = 'put in' | 'evaporated' | 'sampled' | 'residue' | 'spilled' | 'discarded' | 'unexplained'

/** One step down (or up) from the theoretical to the actual mass. */
export interface LossStep {
  readonly kind: LossKind
  readonly changeUg: Micrograms
  /** Where the step begins and ends, counted from nothing. */
  readonly fromUg: Micrograms
  readonly toUg: Micrograms
}

export interface LossSteps {
  readonly theoreticalUg: Micrograms
  readonly steps: readonly LossStep[]
  /** Filled; what the vessels hold by the books where nothing was filled yet. */
  readonly actualUg: Micrograms
}

/**
 * From theoretical to actual: what was put in beyond the plan (make-up, remedies, strangers), then each way that mass
 * has left. The changes sum to actual less theoretical, to the microgram.
 */
export function lossSteps(sums: Reconciliation): LossSteps {
  const changes: readonly (readonly [LossKind, Micrograms])[] = [
    ['put in', sums.addedUg - sums.theoreticalUg],
    ['evaporated', -sums.evaporatedUg],
    ['sampled', -sums.sampledUg],
    ['residue', -sums.residueUg],
    ['spilled', -sums.spilledUg],
    ['discarded', -sums.discardedUg],
    ['unexplained', -(sums.unexplainedUg ?? 0)],
  ]
  let levelUg = sums.theoreticalUg
  const steps = changes.map(([kind, changeUg]): LossStep => {
    const fromUg = levelUg
    levelUg += changeUg
    return { kind, changeUg: changeUg === 0 ? 0 : changeUg, fromUg, toUg: levelUg }
  })
  return { theoreticalUg: sums.theoreticalUg, steps, actualUg: levelUg }
}
