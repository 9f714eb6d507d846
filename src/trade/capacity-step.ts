import { chargeToGo, trendOf } from './capacity-trend'
import { type ChargeCurve, chargeAt } from './charge-curve'
import { type DoseRecord, directionOf, gramsToSit, lastOf, ownCharge, slackPh, type Titration } from './titration'

/**
 * The next addition in exact grams, what bound it, and where it should bring the pH: as expected, and at the furthest.
 * `middle` aims at the middle of the window; `careful` is the most that cannot pass 80 % across if the batch holds its
 * pH ever less from here on. Infinite where the adjuster cannot bring the pH there at all.
 */
export interface CapacityStep {
  readonly grams: number
  readonly bound: 'middle' | 'careful'
  /** The most that cannot pass 80 % across. */
  readonly most: number
  readonly chargeAt: { readonly expected: (ph: number) => number; readonly furthest: (ph: number) => number }
}

const aimAcross = 0.45
const limitAcross = 0.8
/** Readings nearer than this say little about what is between them. */
const apartPh = 0.15
const firstCaution = 0.7
const firstWithCurveCaution = 0.85
const trustInCurve = 0.6
/** With more of its groups reacted than this, a batch's capacity falls about as fast as it can. */
const fallingShare = 0.8

/**
 * The first addition, by an assumed buffer capacity in mol per kg and pH, low on purpose.
 */
export function firstStep(titration: Titration, capacity: number): CapacityStep {
  const { batchKg } = titration
  const { direction, last, aim } = marksOf(titration)
  const expected = (ph: number) => ownCharge(titration, last) - direction * capacity * batchKg * Math.abs(ph - last.ph)
  const grams = firstCaution * (gramsToSit(titration, aim, expected(aim)) - last.grams)
  return { grams, bound: 'careful', most: grams, chargeAt: { expected, furthest: expected } }
}

/**
 * A further addition: the slope of the batch's own charge between two readings is its buffer capacity, and that can fall
 * at most tenfold in one pH unit, which is so for any mix of independent acid groups.
 */
export function nextStep(titration: Titration): CapacityStep {
  const { direction, last, aim, limit } = marksOf(titration)
  const earlier = recordBefore(titration)
  const moved = (last.ph - earlier.ph) * direction
  const charge = ownCharge(titration, last)
  const taken = Math.max(0, (ownCharge(titration, earlier) - charge) * direction)
  const capacity = taken / Math.max(moved, slackPh)
  const capacityHere = (taken / (Math.max(moved, 0) + slackPh)) * shareAtEnd(moved)
  const expected = (ph: number) => charge - direction * capacity * Math.abs(ph - last.ph)
  const furthest = (ph: number) => charge - (direction * capacityHere * (1 - 10 ** -Math.abs(ph - last.ph))) / Math.LN10
  return smaller(titration, aim, expected, limit, furthest)
}

/**
 * The same with the trend of the capacity: one that has been rising has groups ahead of it and cannot fall so soon, which
 * allows more; of one that is falling as fast as it can, less is left at the end of the last stretch than on its mean.
 */
export function nextStepByTrend(titration: Titration): CapacityStep {
  const plain = nextStep(titration)
  const trend = trendOf(titration)
  if (trend === null) return plain
  const { direction, last, aim, limit } = marksOf(titration)
  const charge = ownCharge(titration, last)
  const furthest = (ph: number) => charge - direction * chargeToGo(trend, Math.abs(ph - last.ph))
  const byTrend = smaller(titration, aim, plain.chargeAt.expected, limit, furthest)
  const isFalling = trend.reacted > fallingShare
  return byTrend.grams > plain.grams === isFalling ? plain : byTrend
}

/** An addition by the charge curve of an earlier batch of the formula, scaled to what this one has shown. */
export function stepByCurve(titration: Titration, curve: ChargeCurve): CapacityStep {
  const { records, batchKg } = titration
  const { direction, last, aim, limit } = marksOf(titration)
  const [first] = records
  const charge = ownCharge(titration, last)
  const scale = scaleOf(titration, curve, charge)
  const toGo = (ph: number) => Math.abs(chargeAt(curve, ph) - chargeAt(curve, last.ph)) * batchKg * scale
  const expected = (ph: number) => charge - direction * toGo(ph)
  const furthest = (ph: number) => charge - direction * trustInCurve * toGo(ph)
  const step = smaller(titration, aim, expected, limit, furthest)
  return last === first ? { ...step, grams: firstWithCurveCaution * step.grams } : step
}

function marksOf(titration: Titration) {
  const { near, far } = titration
  return {
    direction: directionOf(titration),
    last: lastOf(titration),
    aim: near + aimAcross * (far - near),
    limit: near + limitAcross * (far - near),
  }
}

/** The latest record that is far enough from the last one to compare with, else the first. */
function recordBefore(titration: Titration): DoseRecord {
  const { records } = titration
  const last = lastOf(titration)
  return records.slice(0, -1).findLast(({ ph }) => Math.abs(ph - last.ph) >= apartPh) ?? records[0]
}

/** The capacity at the end of a stretch along which it fell tenfold per pH unit, as a share of its mean there. */
function shareAtEnd(moved: number): number {
  const exponent = 0.5 * Math.LN10 * moved
  return exponent > 1e-6 ? exponent / (Math.exp(exponent) - 1) : 1
}

/** How much more strongly this batch holds its pH than the earlier one, as far as it has shown it. */
function scaleOf(titration: Titration, curve: ChargeCurve, charge: number): number {
  const { records, batchKg } = titration
  const [first] = records
  const last = lastOf(titration)
  if (Math.abs(last.ph - first.ph) < apartPh) return 1
  const curveMoved = chargeAt(curve, last.ph) - chargeAt(curve, first.ph)
  const shown = (charge - ownCharge(titration, first)) / (batchKg * curveMoved)
  return Math.min(2, Math.max(0.5, shown))
}

function smaller(
  titration: Titration,
  aim: number,
  expected: (ph: number) => number,
  limit: number,
  furthest: (ph: number) => number,
): CapacityStep {
  const last = lastOf(titration)
  const toMiddle = gramsToSit(titration, aim, expected(aim))
  const toLimit = gramsToSit(titration, limit, furthest(limit))
  return {
    grams: Math.min(toMiddle, toLimit) - last.grams,
    bound: toLimit < toMiddle ? 'careful' : 'middle',
    most: toLimit - last.grams,
    chargeAt: { expected, furthest },
  }
}
