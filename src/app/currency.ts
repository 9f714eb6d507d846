import type { Format } from './format'

/** "£2.31", "2.31 EUR and 2 without a price". */
export function currencyText(
  { sum, unpriced }: { readonly sum: number; readonly unpriced: number },
  currency: string,
  format: Pick<Format, 'number'>,
): string {
  const figure = format.number(sum, 2)
  // A sign such as £ stands before the figure, a code such as EUR after it.
  const money = /^\p{Sc}$/u.test(currency) ? `${currency}${figure}` : `${figure} ${currency}`.trim()
  return unpriced === 0 ? money : `${money} and ${unpriced} without a price`
}
