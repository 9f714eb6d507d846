import type { Amount } from './amount'
import { ratioOf } from './decimal'
import { fractionOf, type Micrograms, roundToStep } from './mass'
import { accept, type Result, refuse } from './result'

/** The q.s. line in its parts: they and what is held back sum exactly to the line's target. */
export interface Portioned {
  readonly portions: readonly { readonly step: string; readonly targetUg: Micrograms }[]
  readonly heldBackUg: Micrograms
}

/** Kept of the batch size for rinses and make-up where a formula states nothing. */
const usuallyHeldBack = 0.03

/**
 * Fixed portions are their fraction of the batch, on the balance's step. Held back is the stated share of the batch
 * plus what the adjusters are expected to take; the portion *rest* is what then remains. A formula that states no
 * held-back share and has no room for the usual one holds nothing back; one without *rest* holds back all that is left.
 */
export function portionQs(
  qs: { readonly amount: Amount; readonly stepUg: Micrograms },
  targetUg: Micrograms,
  sizeUg: Micrograms,
  adjustersUg: Micrograms,
): Result<Portioned, { readonly code: 'QS_NEGATIVE'; readonly shortUg: Micrograms }> {
  if (qs.amount.kind !== 'qs') throw new TypeError('Only a q.s. line has portions')
  const { portions, heldBack } = qs.amount
  const fixed = (fraction: number): Micrograms => fractionOf(sizeUg, ratioOf(fraction), qs.stepUg)

  const fixedUg = portions.reduce((sum, portion) => ('rest' in portion ? sum : sum + fixed(portion.fraction)), 0)
  const leftUg = targetUg - fixedUg
  if (leftUg < 0) return refuse({ code: 'QS_NEGATIVE', shortUg: -leftUg })

  const wantedUg = roundToStep(fixed(heldBack ?? usuallyHeldBack) + adjustersUg, qs.stepUg)
  const hasRest = portions.length === 0 || portions.some((portion) => 'rest' in portion)
  if (hasRest && heldBack !== undefined && wantedUg > leftUg)
    return refuse({ code: 'QS_NEGATIVE', shortUg: wantedUg - leftUg })
  const heldBackUg = hasRest ? (wantedUg < leftUg ? wantedUg : 0) : leftUg

  return accept({
    heldBackUg,
    portions: portions.map((portion) => ({
      step: portion.step,
      targetUg: 'rest' in portion ? leftUg - heldBackUg : fixed(portion.fraction),
    })),
  })
}
