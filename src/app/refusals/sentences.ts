/** A sentence for each code of a room: what, where, what to do. */
export type SentencesOf<R extends { readonly code: string }> = {
  readonly [C in R['code']]: (refusal: Extract<R, { readonly code: C }>) => string
}

/** The sentence of a refusal from a table that has one for each of its codes. */
export function sayFrom<R extends { readonly code: string }>(table: SentencesOf<R>, refusal: R): string {
  // The table's type pairs each code with its own refusal; indexing by the union loses that pairing.
  const say = table[refusal.code as R['code']] as (refusal: R) => string
  return say(refusal)
}

/** Grams as a sentence shows them: two decimals, three below 10 g, no trailing zeros past the second. */
export function grams(massUg: number): string {
  const decimals = Math.abs(massUg) < 10_000_000 ? 3 : 2
  return `${(massUg / 1e6)
    .toFixed(decimals)
    .replace(/(\.\d\d)0$/, '$1')
    .replace('-', '−')} g`
}
