import type { Format } from '../../app/format'
import type { SetUp } from './set-up'

/** What the materials of a batch cost in the studio's money; null where no price is known. */
export function costOf({ plan }: SetUp): { readonly sum: number; readonly unpriced: number } | null {
  if (!plan.ok) return null
  const lines = [...plan.value.lines.values()]
  const priced = lines.filter(({ material }) => material.costPerKg !== undefined)
  if (priced.length === 0) return null
  const sum = priced.reduce((total, { material, targetUg }) => total + ((material.costPerKg ?? 0) * targetUg) / 1e9, 0)
  return { sum, unpriced: lines.length - priced.length }
}

/** "£2.31", "2.31 EUR and 2 without a price". */
export function currencyText(
  { sum, unpriced }: { readonly sum: number; readonly unpriced: number },
  currency: string,
  format: Format,
): string {
  const figure = format.number(sum, 2)
  // A sign such as £ stands before the figure, a code such as EUR after it.
  const money = /^\p{Sc}$/u.test(currency) ? `${currency}${figure}` : `${figure} ${currency}`.trim()
  return unpriced === 0 ? money : `${money} and ${unpriced} without a price`
}
