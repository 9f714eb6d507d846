import { type Ratio, ratioOfDecimal } from './decimal'
import { type MassUnit, type Micrograms, massFromRatio } from './mass'
import { accept, type Result, refuse } from './result'

/** `value` is what was understood: in µg where a mass was asked for. */
export type NumberRefusal =
  | { readonly code: 'NUMBER_EMPTY' }
  | { readonly code: 'NUMBER_LETTERS'; readonly text: string }
  | { readonly code: 'NUMBER_TWO_MARKS'; readonly text: string }
  | { readonly code: 'NUMBER_SUM_UNCLEAR'; readonly text: string }
  | { readonly code: 'NUMBER_NEGATIVE' }
  | { readonly code: 'NUMBER_ZERO' }
  | { readonly code: 'NUMBER_ABSURD'; readonly value: number }

/** Negative and zero are taken unless set to false; `max` bounds the size either side of zero. */
export interface NumberOptions {
  readonly negative?: boolean
  readonly zero?: boolean
  readonly max?: number
}

const largestNumber = 1e9
/** One tonne: no store of a bench holds more of one lot. */
const largestMassUg = 1e12

/** A plain decimal with either decimal mark, an optional sign and blanks around it. Sums are for `evaluateSum`. */
export function readDecimal(text: string, options: NumberOptions = {}): Result<number, NumberRefusal> {
  const read = readExact(text)
  return read.ok ? checkNumber(Number(`${read.value.digits}e-${read.value.decimals}`), options) : read
}

/** A mass, exact from the typed decimal; in grams unless one of our units follows it. `max` is in µg. */
export function readMass(text: string, options: NumberOptions = {}): Result<Micrograms, NumberRefusal> {
  const { number, unit } = splitUnit(text)
  const massUnit = unit === '' ? 'g' : massUnitNames.get(unit.toLowerCase())
  if (massUnit === undefined) return refuse({ code: 'NUMBER_LETTERS', text: text.trim() })
  const read = readExact(number)
  return read.ok ? checkNumber(massFromRatio(toRatio(read.value), massUnit), { max: largestMassUg, ...options }) : read
}

/** Whether a text is arithmetic, such as 250.31-187.02 or 3/0.3, and so a matter for `evaluateSum`. */
export function isSum(text: string): boolean {
  const plain = text.trim()
  return /\d/.test(plain) && /^[\d.,\s()+\-−*×/÷]+$/.test(plain) && /[()+\-−*×/÷]/.test(plain.replace(/^[+\-−]/, ''))
}

/** The limits that every typed number is held to, however it was read. */
export function checkNumber(value: number, options: NumberOptions): Result<number, NumberRefusal> {
  if (value < 0 && options.negative === false) return refuse({ code: 'NUMBER_NEGATIVE' })
  if (value === 0) return options.zero === false ? refuse({ code: 'NUMBER_ZERO' }) : accept(0)
  return Math.abs(value) > (options.max ?? largestNumber) ? refuse({ code: 'NUMBER_ABSURD', value }) : accept(value)
}

/** A quantity's number and the unit behind it, '' where there is none: "75 °C" is 75 and °C. */
export function splitUnit(text: string): { readonly number: string; readonly unit: string } {
  const [, number = '', unit = ''] = /^([\d.,\s()+\-−*×/÷]*)(.*)$/su.exec(text.trim()) ?? []
  return { number: number.trim(), unit: unit.trim() }
}

const massUnitNames: ReadonlyMap<string, MassUnit> = new Map([
  ['µg', 'µg'],
  ['μg', 'µg'],
  ['ug', 'µg'],
  ['mg', 'mg'],
  ['g', 'g'],
  ['kg', 'kg'],
  ['oz', 'oz'],
  ['lb', 'lb'],
])

interface Exact {
  readonly digits: bigint
  readonly decimals: number
}

const toRatio = ({ digits, decimals }: Exact): Ratio => ratioOfDecimal(digits, decimals)

function readExact(text: string): Result<Exact, NumberRefusal> {
  const plain = text.trim()
  const [, sign = '', whole = '', part = ''] = /^([+\-−]?)\s*(\d*)(?:[.,](\d*))?$/.exec(plain) ?? []
  if (whole === '' && part === '') return refuse(whyUnread(plain))
  const digits = BigInt(`${whole}${part}`)
  return accept({ digits: sign === '-' || sign === '−' ? -digits : digits, decimals: part.length })
}

function whyUnread(plain: string): NumberRefusal {
  if (/[^\d.,\s()+\-−*×/÷]/u.test(plain)) return { code: 'NUMBER_LETTERS', text: plain }
  if (!/\d/.test(plain)) return { code: 'NUMBER_EMPTY' }
  return isSum(plain) ? { code: 'NUMBER_SUM_UNCLEAR', text: plain } : { code: 'NUMBER_TWO_MARKS', text: plain }
}
