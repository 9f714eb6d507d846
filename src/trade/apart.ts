/** Two decimals of a percentage tell most things; five tell a microgram in a gram. */
const [fewest, most] = [2, 5]

/**
 * With how many decimals percentages are to be shown so that none looks like another one that it is not: two, or as
 * many as tell the nearest two apart. Fractions 0–1.
 */
export function decimalsApart(fractions: readonly number[]): number {
  for (let decimals = fewest; decimals < most; decimals += 1) {
    const shown = new Map<string, number>()
    const isTold = fractions.every((fraction) => {
      const text = (fraction * 100).toFixed(decimals)
      const other = shown.get(text) ?? fraction
      shown.set(text, other)
      return Math.abs(other - fraction) < same
    })
    if (isTold) return decimals
  }
  return most
}

/** Nearer than this they are the same. */
const same = 1e-9
