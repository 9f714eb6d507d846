import { addressOf } from './routes'

const mark = 'side-by-side'

/** The address where batches of a formula stand side by side; the one named is among them. */
export const sideBySide = (formula: string, batch?: string): string =>
  addressOf({ place: 'formulas', formula, batch: batch === undefined ? mark : `${mark} ${batch}` })

/** Whether an address's batch means all of them side by side, and which is asked about; null where it is one batch. */
export function sideBySideOf(part: string): { readonly asked?: string } | null {
  if (part === mark) return {}
  return part.startsWith(`${mark} `) ? { asked: part.slice(mark.length + 1) } : null
}
