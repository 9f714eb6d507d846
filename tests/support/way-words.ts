import { grams } from '../../src/app/refusals/sentences'
import type { WayWords } from '../../src/app/refusals/ways-on'

/** Figures as they stand in a sentence, with a point and a blank before the unit. */
export const plainWords = (nameOf: (id: string) => string): WayWords => ({
  nameOf,
  mass: grams,
  percent: (fraction) => `${(fraction * 100).toFixed(2)} %`,
})
