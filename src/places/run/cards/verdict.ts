/** How a value stands to its limits; `open` before there is a value. */
export type Verdict = 'open' | 'within' | 'below' | 'above'

export function verdictOf(
  value: number,
  limits: { readonly min?: number; readonly max?: number } | undefined,
): Verdict {
  if (limits?.min !== undefined && value < limits.min) return 'below'
  return limits?.max !== undefined && value > limits.max ? 'above' : 'within'
}
