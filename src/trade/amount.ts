/** How much of a line a formula asks for. Fractions are decimals of the finished batch, 0–1. */
export type Amount =
  | { readonly kind: 'fraction'; readonly fraction: number }
  | { readonly kind: 'qs'; readonly portions: readonly Portion[]; readonly heldBack?: number }
  | { readonly kind: 'as-needed'; readonly expected: number; readonly min: number; readonly max: number }

/** A part of the q.s. line, weighed in its own step: a fixed fraction, or all that the other portions leave. */
export type Portion =
  | { readonly step: string; readonly fraction: number }
  | { readonly step: string; readonly rest: true }

/** Relative to the target (0.01 is ±1 %), or an absolute half-width in micrograms. */
export type Tolerance = { readonly relative: number } | { readonly absoluteUg: number }
