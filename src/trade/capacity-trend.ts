import { type DoseRecord, directionOf, lastOf, ownCharge, slackPh, type Titration } from './titration'

/** How the buffer capacity has been changing, in the direction of travel. */
export interface CapacityTrend {
  /** At the last record, mol per pH, told low. */
  readonly capacity: number
  /**
   * Mean share of the groups that have reacted already, told high: 0 while all of them lie ahead, 1 when the capacity
   * falls tenfold per pH unit from here on.
   */
  readonly reacted: number
}

/** Stretches shorter than this say more of the meter than of the batch. */
const stretchPh = 0.4
/** How many standard deviations of the slope the reacted share is told too high by. */
const caution = 2.5
const leastShare = 0.02

/**
 * The trend over the last two stretches of the batch's own charge; null where there are none yet.
 *
 * For one acid group of which a share x has reacted, β = ln10·C·x(1−x), and log β changes by 1 − 2x per pH. In a mixture
 * that slope is the mean over the groups, each by its part of β, so the mean share is known from it.
 */
export function trendOf(titration: Titration): CapacityTrend | null {
  const last = lastOf(titration)
  const middle = recordApart(titration, last)
  const first = middle && recordApart(titration, middle)
  if (middle === undefined || first === undefined) return null
  const before = stretchOf(titration, first, middle)
  const after = stretchOf(titration, middle, last)
  if (before === null || after === null) return null
  const between = (before.moved + after.moved) / 2
  const slope = Math.log10(after.capacity / before.capacity) / between
  const doubt = (caution * Math.hypot(slackPh / before.moved, slackPh / after.moved)) / Math.LN10 / between
  const share = Math.min(1, Math.max(leastShare, (1 - slope + doubt) / 2))
  // That is where the middles of the two stretches have their middle; since then the pH has gone on.
  const reacted = advanced(share, (3 * after.moved + before.moved) / 4)
  return { capacity: after.capacity * shareAtEnd(reacted, after.moved), reacted }
}

/**
 * The least charge that brings such a batch on by so much pH, in mol: β/ln10 · (10^d − 1) ÷ (1 + x(10^d − 1)). It is exact
 * for one group, and no mixture of the same mean share takes less, since it is convex in x (Jensen).
 */
export function chargeToGo({ capacity, reacted }: CapacityTrend, byPh: number): number {
  const grown = 10 ** byPh - 1
  return ((capacity / Math.LN10) * grown) / (1 + reacted * grown)
}

interface Stretch {
  readonly moved: number
  readonly capacity: number
}

function stretchOf(titration: Titration, from: DoseRecord, to: DoseRecord): Stretch | null {
  const direction = directionOf(titration)
  const moved = (to.ph - from.ph) * direction
  const taken = (ownCharge(titration, from) - ownCharge(titration, to)) * direction
  return moved > 0 && taken > 0 ? { moved, capacity: taken / (moved + slackPh) } : null
}

const recordApart = ({ records }: Titration, from: DoseRecord): DoseRecord | undefined =>
  records.slice(0, records.indexOf(from)).findLast(({ ph }) => Math.abs(ph - from.ph) >= stretchPh)

/** The share of one group once the pH has gone on. */
function advanced(share: number, byPh: number): number {
  const grown = share * 10 ** byPh
  return grown / (1 - share + grown)
}

/** The capacity of one group at the end of a stretch, as a share of its mean there. */
function shareAtEnd(reacted: number, moved: number): number {
  const crossed = reacted - advanced(reacted, -moved)
  // Of a group that has all but reacted: the limit of the same for x → 1.
  if (crossed < 1e-9) return (Math.LN10 * moved) / (10 ** moved - 1)
  return (Math.LN10 * moved * reacted * (1 - reacted)) / crossed
}
