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
