/** Repeatable small disturbances: the same seed gives the same demonstration, to the byte. */
export interface Noise {
  /** Uniform in [0, 1). */
  readonly next: () => number
  /** Mean 0, standard deviation about 1, never beyond ±3. */
  readonly bell: () => number
  readonly between: (low: number, high: number) => number
  readonly whole: (low: number, high: number) => number
}

/** A linear congruential generator (Numerical Recipes' constants, modulo 2³²). */
export function noiseOf(seed: number): Noise {
  let state = seed >>> 0
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
  const between = (low: number, high: number): number => low + (high - low) * next()
  return {
    next,
    between,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    bell: () => (next() + next() + next() - 1.5) * 2,
  }
}
