import { over, type Ratio, ratioOf, roundRatio, times } from './decimal'

/** A mass in whole micrograms: every sum of masses is exact. */
export type Micrograms = number

/** What one of each unit weighs, in micrograms. The ounce and pound are the international avoirdupois ones (exact). */
export const massUnits = {
  µg: 1,
  mg: 1_000,
  g: 1_000_000,
  kg: 1_000_000_000,
  oz: 28_349_523.125,
  lb: 453_592_370,
} as const

export type MassUnit = keyof typeof massUnits

export const massFromUnit = (value: number, unit: MassUnit): Micrograms => massFromRatio(ratioOf(value), unit)

export const massFromRatio = (value: Ratio, unit: MassUnit): Micrograms =>
  roundRatio(times(value, ratioOf(massUnits[unit])))

/** Exact for a typed decimal; a half microgram goes away from zero. */
export const microgramsFromGrams = (grams: number): Micrograms => massFromUnit(grams, 'g')

/** The nearest multiple of the step, a half going away from zero. */
export function roundToStep(massUg: Micrograms, stepUg: Micrograms): Micrograms {
  const size = Math.abs(massUg)
  const below = size - (size % stepUg)
  const rounded = 2 * (size - below) >= stepUg ? below + stepUg : below
  return massUg < 0 && rounded > 0 ? -rounded : rounded
}

/** The multiple of the step at or below the mass. */
export function roundDownToStep(massUg: Micrograms, stepUg: Micrograms): Micrograms {
  const rest = massUg % stepUg
  return massUg - (rest < 0 ? rest + stepUg : rest)
}

/** The multiple of the step at or above the mass. */
export function roundUpToStep(massUg: Micrograms, stepUg: Micrograms): Micrograms {
  const down = roundDownToStep(massUg, stepUg)
  return down === massUg ? down : down + stepUg
}

/** fraction × mass to the nearest step, in one rounding. */
export function fractionOf(massUg: Micrograms, fraction: Ratio, stepUg: Micrograms): Micrograms {
  return roundRatio(over(times({ n: BigInt(massUg), d: 1n }, fraction), { n: BigInt(stepUg), d: 1n })) * stepUg
}

/** How many decimals a balance of this readability shows in grams: 0.001 g has 3. */
export function decimalsOf(stepUg: Micrograms): number {
  let decimals = 0
  while (decimals < 6 && (stepUg * 10 ** decimals) % massUnits.g !== 0) decimals += 1
  return decimals
}

/** Grams without their unit, to the step, with that step's decimals; thousands are not grouped. */
export function formatMass(massUg: Micrograms, stepUg: Micrograms, decimalMark: '.' | ','): string {
  const decimals = decimalsOf(stepUg)
  const rounded = roundToStep(Math.round(massUg), stepUg)
  const digits = String(Math.abs(rounded)).padStart(7, '0')
  const whole = digits.slice(0, -6)
  const shown = decimals === 0 ? whole : `${whole}${decimalMark}${digits.slice(-6).slice(0, decimals)}`
  return rounded < 0 ? `−${shown}` : shown
}
