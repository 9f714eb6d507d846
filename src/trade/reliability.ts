import type { Micrograms } from './mass'
import type { Balance, Reading } from './weighing'

/** A net mass, the balance it was read on, and how. */
export interface Weighing {
  readonly netUg: Micrograms
  readonly balance: Balance
  readonly mode: Reading['mode']
}

/**
 * Standard uncertainty of a net mass in µg (not rounded): repeatability once when re-tared, twice when two loads are
 * compared; two roundings of d; non-linearity; sensitivity. u² = q²·s² + 2·d²/12 + lin²/3 + (uS·W)².
 */
export function uncertaintyOf({ netUg, balance, mode }: Weighing): number {
  return Math.sqrt(ownVariance(balance, mode) + ((balance.sensitivity ?? 0) * netUg) ** 2)
}

/**
 * Standard uncertainty of one line's fraction of the whole. The sensitivity error is common to all lines and cancels:
 * u(x_i)² = [(1−x_i)²·u_i² + x_i²·Σ_{j≠i} u_j²] ÷ M².
 */
export function uncertaintyOfFraction(weighings: readonly Weighing[], index: number): number {
  const asked = weighings[index]
  if (!asked) throw new RangeError(`There is no weighing ${index}`)
  const totalUg = weighings.reduce((sum, weighing) => sum + weighing.netUg, 0)
  const fraction = asked.netUg / totalUg
  const own = ownVariance(asked.balance, asked.mode)
  const others = weighings.reduce(
    (sum, { balance, mode }, at) => (at === index ? sum : sum + ownVariance(balance, mode)),
    0,
  )
  return Math.sqrt((1 - fraction) ** 2 * own + fraction ** 2 * others) / totalUg
}

/** Expanded uncertainty at about 95 % (coverage factor 2). */
export const expanded = (uncertainty: number): number => 2 * uncertainty

/** Masses in µg, not rounded. Below the first a balance cannot serve the tolerance; below the second it does so fairly. */
export interface SmallestMass {
  readonly blocksBelow: number
  readonly fairBelow: number
}

/**
 * The smallest mass that a balance weighs well enough for a relative tolerance: 2·s·q ÷ tolerance, q = √2 where two
 * loads are compared. Weighing may take a third of the tolerance; up to that it is only *fair*.
 */
export function smallestReliableMass(
  balance: Pick<Balance, 'stepUg' | 'repeatabilityUg'>,
  tolerance: number,
  cumulative: boolean,
): SmallestMass {
  const spread = 2 * effectiveRepeatability(balance) * (cumulative ? Math.SQRT2 : 1)
  return { blocksBelow: spread / tolerance, fairBelow: spread / (tolerance / 3) }
}

export type Reliability = 'blocked' | 'fair' | 'good'

export function reliabilityOf(massUg: Micrograms, { blocksBelow, fairBelow }: SmallestMass): Reliability {
  if (massUg < blocksBelow) return 'blocked'
  return massUg < fairBelow ? 'fair' : 'good'
}

function ownVariance(balance: Balance, mode: Reading['mode']): number {
  const loads = mode === 're-tare' ? 1 : 2
  const rounding = (2 * balance.stepUg ** 2) / 12
  return loads * effectiveRepeatability(balance) ** 2 + rounding + (balance.linearityUg ?? 0) ** 2 / 3
}

/** Never below 0.41 d: a balance that repeats its last digit still rounds (USP 41). */
const effectiveRepeatability = (balance: Pick<Balance, 'stepUg' | 'repeatabilityUg'>): number =>
  Math.max(balance.repeatabilityUg, 0.41 * balance.stepUg)
