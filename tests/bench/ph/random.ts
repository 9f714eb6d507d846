/** Numbers that come out the same for the same seed. */
export interface Random {
  /** Evenly from 0 to below 1. */
  readonly even: () => number
  readonly between: (low: number, high: number) => number
  /** Evenly on a logarithmic scale. */
  readonly scaled: (low: number, high: number) => number
  /** Normal, by its mean and standard deviation. */
  readonly normal: (mean: number, deviation: number) => number
  readonly oneOf: <T>(...choices: readonly [T, ...T[]]) => T
}

/** A 64-bit multiplicative sequence (SplitMix64) of which the upper 53 bits are used; normal deviates by Marsaglia's polar method. */
export function randomOf(seed: number): Random {
  let state = BigInt.asUintN(64, BigInt(Math.trunc(seed)) * 0x9e3779b97f4a7c15n)
  const even = (): number => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n)
    let mixed = BigInt.asUintN(64, (state ^ (state >> 30n)) * 0xbf58476d1ce4e5b9n)
    mixed = BigInt.asUintN(64, (mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn)
    return Number((mixed ^ (mixed >> 31n)) >> 11n) / 2 ** 53
  }
  const between = (low: number, high: number): number => low + (high - low) * even()
  const normal = (mean: number, deviation: number): number => {
    for (;;) {
      const [x, y] = [between(-1, 1), between(-1, 1)]
      const square = x * x + y * y
      if (square > 0 && square < 1) return mean + deviation * x * Math.sqrt((-2 * Math.log(square)) / square)
    }
  }
  return {
    even,
    between,
    scaled: (low, high) => low * (high / low) ** even(),
    normal,
    oneOf: (...choices) => choices[Math.floor(even() * choices.length)] ?? choices[0],
  }
}
