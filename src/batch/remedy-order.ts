import { rankRemedies } from '../trade/remedy-rank'
import type { RemedyOffer } from './remedy-offer'

/**
 * Remedies as a chemist would prefer them (see `rankRemedies`). What throws material away comes after whatever else
 * breaks no more limits, leaving it as it is after that, what cannot be gone last. Of two that ask for the same, one.
 */
export function inMerit(offers: readonly RemedyOffer[]): readonly RemedyOffer[] {
  const open = once(offers.filter(({ feasible }) => feasible))
  const isPlain = ({ remedy }: RemedyOffer): boolean => remedy !== 'accept' && remedy !== 'discard'
  let ranked = rankRemedies(open.filter(isPlain), ({ merits }) => merits).map(({ offer, reason }) => ({
    ...offer,
    reason,
  }))
  for (const kind of ['discard', 'accept'] as const) {
    const late = open.find(({ remedy }) => remedy === kind)
    if (late) ranked = insert(ranked, late)
  }
  return [...ranked, ...closed(offers.filter(({ feasible }) => !feasible))]
}

function insert(ranked: readonly RemedyOffer[], late: RemedyOffer): RemedyOffer[] {
  const at = ranked.findIndex(({ breaks }) => breaks > late.breaks)
  return at < 0 ? [...ranked, late] : ranked.toSpliced(at, 0, { ...late, reason: 'inside-limits' })
}

/** Leaving it as it is stands, whatever else comes to the same. */
function once(offers: readonly RemedyOffer[]): readonly RemedyOffer[] {
  const seen = new Set<string>()
  return offers.filter((offer) => {
    if (offer.remedy === 'accept' || offer.remedy === 'discard') return true
    const { totalUg, heldBackUg, targets } = offer
    const key = JSON.stringify([totalUg, heldBackUg, [...targets].sort((a, b) => (a.step < b.step ? -1 : 1))])
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

/** Departing, like the least cost, is said to be impossible only where nothing else says the same. */
const closed = (offers: readonly RemedyOffer[]): readonly RemedyOffer[] =>
  offers.filter(
    ({ remedy, why }) =>
      remedy !== 'departure' || offers.every((each) => each.remedy === remedy || each.why?.code !== why?.code),
  )
