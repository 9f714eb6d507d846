import { type Micrograms, microgramsFromGrams } from '../../../src/trade/mass.ts'

/** Grams as the data modules write them. */
export const g = (grams: number): Micrograms => microgramsFromGrams(grams)
export const kg = (kilograms: number): Micrograms => microgramsFromGrams(kilograms * 1000)
