/** Figures as the benches print them. Quantiles by the nearest rank: each is one of the values measured. */
export const quantile = (values: readonly number[], share: number): number => {
  const ordered = [...values].sort((one, other) => one - other)
  return ordered[Math.max(0, Math.ceil(share * ordered.length) - 1)] ?? Number.NaN
}

export const median = (values: readonly number[]): number => quantile(values, 0.5)

export const rounded = (value: number, decimals = 2): number => Number(value.toFixed(decimals))

/** A figure against its budget, and whether it keeps it. */
export const against = (value: number, limit: number) => ({
  value: rounded(value),
  limit,
  within: value <= limit,
})
