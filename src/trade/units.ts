import { ratioOf, times } from './decimal'
import { loadArithmetic } from './load-arithmetic'
import { type Micrograms, massFromRatio } from './mass'
import { checkNumber, type NumberOptions, type NumberRefusal, readDecimal, readMass, splitUnit } from './number-text'
import { type Result, refuse } from './result'
import { tidy } from './typed-sum'

export type Dimension = 'mass' | 'temperature' | 'volume' | 'viscosity' | 'time'

export type QuantityRefusal =
  | NumberRefusal
  | { readonly code: 'UNIT_UNKNOWN'; readonly unit: string; readonly dimension: Dimension }

/**
 * A number with its unit, in the app's unit of that dimension: mass → µg, temperature → °C, volume → mL,
 * viscosity → mPa·s, time → ms. Without a unit: g, °C, mL, mPa·s, min.
 */
export async function readQuantity(
  text: string,
  dimension: Dimension,
  options: NumberOptions = {},
): Promise<Result<number, QuantityRefusal>> {
  const { number, unit } = splitUnit(text)
  const known = names[dimension].get(unit.replace(/\s+/g, '').toLowerCase())
  if (known === undefined && number === '') return refuse({ code: 'NUMBER_LETTERS', text: text.trim() })
  if (known === undefined) return refuse({ code: 'UNIT_UNKNOWN', unit, dimension })
  // Exactly, to the last microgram: the library's units are binary numbers.
  if (dimension === 'mass') return readMass(text, options)
  const read = readDecimal(number)
  if (!read.ok) return read
  const { inUnit } = await loadArithmetic()
  const value = inUnit(read.value, known, home[dimension])
  // To the tenth that a thermometer shows: more was not read.
  return checkNumber(known === 'degF' ? Math.round(value * 10) / 10 : tidy(value), options)
}

/** The mass of a volume at a density, exact for the decimals as typed. */
export const massOfVolume = (volumeMl: number, densityGPerMl: number): Micrograms =>
  massFromRatio(times(ratioOf(volumeMl), ratioOf(densityGPerMl)), 'g')

/** The app's units, as the library names them. */
const home = { temperature: 'degC', volume: 'ml', viscosity: 'mPa s', time: 'ms' }

const written = (unit: string, ...names: string[]): [string, string][] => names.map((name) => [name, unit])

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
