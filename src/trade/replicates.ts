/** Readings of one thing, one after the other. Of two the spread is their range: two give no standard deviation worth a name. */
export interface Replicates {
  readonly n: number
  readonly mean: number
  readonly spread: { readonly kind: 's' | 'range'; readonly value: number } | null
}

/** Null where there is nothing to take a mean of. Neither the order nor the unit of the readings changes what is said. */
export function replicatesOf(readings: readonly number[]): Replicates | null {
  const n = readings.length
  if (n === 0 || !readings.every(Number.isFinite)) return null
  const sorted = [...readings].sort((a, b) => a - b)
  const [least = 0, most = 0] = [sorted[0], sorted.at(-1)]
  // Summed from the least up, and away from it, so that equal readings have exactly themselves as their mean.
  const mean = tidy(least + sorted.reduce((sum, reading) => sum + (reading - least), 0) / n)
  if (n === 1) return { n, mean, spread: null }
  if (n === 2) return { n, mean, spread: { kind: 'range', value: tidy(most - least) } }
  const squares = sorted.reduce((sum, reading) => sum + (reading - mean) ** 2, 0)
  return { n, mean, spread: { kind: 's', value: tidy(Math.sqrt(squares / (n - 1))) } }
}

/** What binary fractions leave behind the twelfth figure is no instrument's. */
const tidy = (value: number): number => Number(value.toPrecision(12))
