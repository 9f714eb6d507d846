/**
 * An exact fraction of two whole numbers, so that a typed decimal (0.0133, 250.31) is multiplied and rounded
 * as the person wrote it and not as binary floating point holds it.
 */
export interface Ratio {
  readonly n: bigint
  readonly d: bigint
}

/** The decimal that a number was typed as: 15 significant digits, which is what a double keeps of any typed decimal. */
export function ratioOf(value: number): Ratio {
  if (!Number.isFinite(value)) throw new RangeError('A ratio needs a finite number')
  const [mantissa = '0', exponent = '0'] = value.toExponential(14).split('e')
  return ratioOfDecimal(BigInt(mantissa.replace('.', '')), 14 - Number(exponent))
}

/** digits × 10^−decimals, as an exact ratio. */
export function ratioOfDecimal(digits: bigint, decimals: number): Ratio {
  return decimals >= 0 ? { n: digits, d: 10n ** BigInt(decimals) } : { n: digits * 10n ** BigInt(-decimals), d: 1n }
}

export const times = (a: Ratio, b: Ratio): Ratio => ({ n: a.n * b.n, d: a.d * b.d })

/** a ÷ b, for a positive b. */
export function over(a: Ratio, b: Ratio): Ratio {
  if (b.n <= 0n) throw new RangeError('A ratio is divided by a positive ratio only')
  return { n: a.n * b.d, d: a.d * b.n }
}

/** The nearest whole number, a half going away from zero. */
export function roundRatio({ n, d }: Ratio): number {
  const size = n < 0n ? -n : n
  const rounded = (2n * size + d) / (2n * d)
  return Number(n < 0n ? -rounded : rounded)
}

/** The whole number at or below a ratio that is not negative. */
export const floorRatio = ({ n, d }: Ratio): number => Number(n / d)
