import type { Reading } from '../trade/weighing'
import { decide } from './decide'
import { type RemedyOffer, remediesFor } from './deviation'
import type { OnHand } from './remedy-limits'
import type { BatchState } from './state'
import { whatIf } from './what-if'

interface Weighed {
  readonly step: string
  readonly reading: Reading
  readonly lot?: string
  readonly checkedBy?: string
}

/**
 * The cheapest way out if a reading were recorded that is past its band, worked out on a batch that nobody sees; null
 * where it would be no deviation of a vessel, or could not be recorded. Of the ways that break the fewest limits the one
 * whose material costs the least, or adds the least where no prices are known.
 */
export function forewarn(
  state: BatchState,
  weighed: Weighed,
  nowMs: number,
  onHand: OnHand = null,
): RemedyOffer | null {
  let ids = 0
  const context = { nowMs, by: state.person, newId: () => `unsaved:${ids++}` }
  const decision = decide(state, { do: 'weigh', ...weighed }, context)
  if (!decision.ok) return null
  const noticed = decision.value.find((draft) => draft.kind === 'deviation-noticed')
  if (noticed?.kind !== 'deviation-noticed' || noticed.body.inCup) return null
  const offers = remediesFor(whatIf(state, decision.value), noticed.body.deviation, onHand).filter(
    ({ feasible }) => feasible,
  )
  const fewest = Math.min(...offers.map(({ breaks }) => breaks))
  const [cheapest] = offers.filter(({ breaks }) => breaks === fewest).sort(byCost)
  return cheapest ?? null
}

function byCost(a: RemedyOffer, b: RemedyOffer): number {
  const [one, other] = [a.merits.cost, b.merits.cost]
  return (one !== null && other !== null ? one - other : 0) || a.merits.addedUg - b.merits.addedUg
}
