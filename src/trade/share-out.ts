import type { Micrograms } from './mass'

/**
 * An amount divided in proportion to the weights: largest remainder, ties by order. The shares are whole, sum exactly
 * to the amount, and none is above its weight when the amount is not above the sum of the weights.
 */
export function shareOut(amountUg: Micrograms, weights: readonly Micrograms[]): Micrograms[] {
  const sumUg = weights.reduce((sum, weight) => sum + weight, 0)
  if (amountUg === sumUg) return [...weights]
  if (amountUg === 0) return weights.map(() => 0)
  if (sumUg <= 0) throw new RangeError('An amount cannot be shared out among weights of nothing')

  const parts = weights.map((weightUg) => divide(amountUg, weightUg, sumUg))
  const shares = parts.map((part) => part.quotient)
  const left = amountUg - shares.reduce((sum, share) => sum + share, 0)
  const byRemainder = parts.map((_, index) => index).sort((a, b) => remainderAt(parts, b) - remainderAt(parts, a))
  for (const index of byRemainder.slice(0, left)) shares[index] = (shares[index] ?? 0) + 1
  return shares
}

interface Part {
  readonly quotient: number
  readonly remainder: number
}

const remainderAt = (parts: readonly Part[], index: number): number => parts[index]?.remainder ?? 0

/** Whole division of amount × weight by the sum; through BigInt only where the product leaves the exact integers. */
function divide(amountUg: Micrograms, weightUg: Micrograms, sumUg: Micrograms): Part {
  const product = amountUg * weightUg
  if (product <= Number.MAX_SAFE_INTEGER) {
    const remainder = product % sumUg
    return { quotient: (product - remainder) / sumUg, remainder }
  }
  const exact = BigInt(amountUg) * BigInt(weightUg)
  const divisor = BigInt(sumUg)
  const quotient = exact / divisor
  return { quotient: Number(quotient), remainder: Number(exact - quotient * divisor) }
}
