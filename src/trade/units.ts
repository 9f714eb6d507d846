import { ratioOf, times } from './decimal'
import { loadArithmetic } from './load-arithmetic'
import { type Micrograms, massFromRatio } from './mass'
import { checkNumber, type NumberOptions, type NumberRefusal, readDecimal, readMass, splitUnit } from './number-text'
import { type Result, refuse } from './result'
import { tidy } from './typed-sum'

const dimensions = ['mass', 'temperature', 'volume', 'viscosity', 'time'] as const
export type Dimension = (typeof dimensions)[number]

export type QuantityRefusal =
  | NumberRefusal
  | { readonly code: 'UNIT_UNKNOWN'; readonly unit: string; readonly dimension: Dimension }

/**
 * A number with its unit, in the app's unit of that dimension: mass → µg, temperature → °C, volume → mL,
 * viscosity → mPa·s, time → ms; or, but for a mass, in another of its units, `into`. Without a unit: g, °C, mL, mPa·s, min.
 */
export async function readQuantity(
  text: string,
  dimension: Dimension,
  options: NumberOptions = {},
  into?: string,
): Promise<Result<number, QuantityRefusal>> {
  const { number, unit } = splitUnit(text)
  const known = libraryUnit(unit, dimension)
  if (known === undefined && number === '') return refuse({ code: 'NUMBER_LETTERS', text: text.trim() })
  if (known === undefined) return refuse({ code: 'UNIT_UNKNOWN', unit, dimension })
  // Exactly, to the last microgram: the library's units are binary numbers.
  if (dimension === 'mass') return readMass(text, options)
  const read = readDecimal(number)
  if (!read.ok) return read
  const { inUnit } = await loadArithmetic()
  const value = inUnit(read.value, known, (into && libraryUnit(into, dimension)) ?? home[dimension])
  // To the tenth that a thermometer shows: more was not read.
  return checkNumber(known === 'degF' ? Math.round(value * 10) / 10 : tidy(value), options)
}

/** What a unit is of; undefined for those that have no others here, as % and rpm. */
export const dimensionOf = (unit: string): Dimension | undefined =>
  unit === '' ? undefined : dimensions.find((dimension) => libraryUnit(unit, dimension) !== undefined)

/** Whether a text is a number with a unit of that dimension behind it, and so a matter for `readQuantity`. */
export function isQuantity(text: string, dimension: Dimension): boolean {
  const { number, unit } = splitUnit(text)
  return unit !== '' && libraryUnit(unit, dimension) !== undefined && readDecimal(number).ok
}

/** The mass of a volume in mL at a density in g/mL, exact for the decimals as typed. */
export const massOfVolume = (volumeMl: number, densityGPerMl: number): Micrograms =>
  massFromRatio(times(ratioOf(volumeMl), ratioOf(densityGPerMl)), 'g')

/** The app's units, as the library names them. */
const home = { temperature: 'degC', volume: 'ml', viscosity: 'mPa s', time: 'ms' }

const written = (unit: string, ...names: string[]): [string, string][] => names.map((name) => [name, unit])

const libraryUnit = (unit: string, dimension: Dimension): string | undefined =>
  names[dimension].get(unit.replace(/\s+/g, '').toLowerCase())

/** What people write, in small letters without blanks, and the library's name for it. */
const names: Record<Dimension, ReadonlyMap<string, string>> = {
  mass: new Map(['', 'µg', 'μg', 'ug', 'mg', 'g', 'kg', 'oz', 'lb'].map((name) => [name, name])),
  temperature: new Map([...written('degC', '', '°c', 'c'), ...written('degF', '°f', 'f')]),
  volume: new Map([...written('ml', '', 'ml'), ...written('cm3', 'cm3', 'cm³', 'cc'), ...written('l', 'l')]),
  viscosity: new Map([
    ...written('mPa s', '', 'mpa·s', 'mpas', 'mpa.s', 'cp', 'cps'),
    ...written('Pa s', 'pa·s', 'pas', 'pa.s'),
  ]),
  time: new Map([...written('min', '', 'min'), ...written('h', 'h'), ...written('s', 's'), ...written('ms', 'ms')]),
}
