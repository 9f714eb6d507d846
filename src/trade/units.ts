import type { ConstantNode, MathNode, OperatorNode, ParenthesisNode } from 'mathjs'
import { times as product, ratioOf } from './decimal'
import { type Micrograms, massFromRatio } from './mass'
import { checkNumber, type NumberOptions, type NumberRefusal, readDecimal, readMass, splitUnit } from './number-text'
import { once } from './once'
import { type Result, refuse } from './result'

export type Dimension = 'mass' | 'temperature' | 'volume' | 'viscosity' | 'time'

export type QuantityRefusal =
  | NumberRefusal
  | { readonly code: 'UNIT_UNKNOWN'; readonly unit: string; readonly dimension: Dimension }

/** Longer sums are not typed at a bench; a short one cannot keep the arithmetic busy. */
const longestSum = 60

/** A typed sum of numbers, + − × ÷ and parentheses, to nine decimals; neither names nor functions are understood. */
export async function evaluateSum(text: string, options: NumberOptions = {}): Promise<Result<number, NumberRefusal>> {
  const plain = text.trim()
  const unclear = { code: 'NUMBER_SUM_UNCLEAR', text: plain } as const
  if (plain === '') return refuse({ code: 'NUMBER_EMPTY' })
  if (/[^\d.,\s()+\-−*×/÷]/u.test(plain)) return refuse({ code: 'NUMBER_LETTERS', text: plain })
  if (/\d*[.,]\d*[.,]/.test(plain)) return refuse({ code: 'NUMBER_TWO_MARKS', text: plain })
  if (plain.length > longestSum) return refuse(unclear)
  const value = await worthOfSum(
    plain.replaceAll(',', '.').replaceAll('−', '-').replaceAll('×', '*').replaceAll('÷', '/'),
  )
  return value === undefined ? refuse(unclear) : checkNumber(tidy(value), options)
}

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
  const home = toHome[dimension].get(unit.replace(/\s+/g, '').toLowerCase())
  if (home === undefined && number === '') return refuse({ code: 'NUMBER_LETTERS', text: text.trim() })
  if (home === undefined) return refuse({ code: 'UNIT_UNKNOWN', unit, dimension })
  if (dimension === 'mass') return readMass(text, options)
  const read = readDecimal(number)
  return read.ok ? checkNumber(tidy(home(read.value)), options) : read
}

/** The mass of a volume at a density, exact for the decimals as typed. */
export const massOfVolume = (volumeMl: number, densityGPerMl: number): Micrograms =>
  massFromRatio(product(ratioOf(volumeMl), ratioOf(densityGPerMl)), 'g')

type Conversion = (value: number) => number

const times =
  (factor: number): Conversion =>
  (value) =>
    value * factor

const eachAs = (conversion: Conversion, ...names: string[]): [string, Conversion][] =>
  names.map((name) => [name, conversion])

/** What people write, in small letters without blanks, and how it becomes the app's unit; all by definition (SI). */
const toHome: Record<Dimension, ReadonlyMap<string, Conversion>> = {
  // Masses are read exactly, by `readMass`: here only the names count.
  mass: new Map(eachAs(times(1), '', 'µg', 'μg', 'ug', 'mg', 'g', 'kg', 'oz', 'lb')),
  temperature: new Map([
    ...eachAs(times(1), '', '°c', 'c'),
    // To the tenth that a thermometer shows: more was not read.
    ...eachAs((fahrenheit) => Math.round((fahrenheit - 32) / 0.18) / 10, '°f', 'f'),
  ]),
  volume: new Map([...eachAs(times(1), '', 'ml', 'cm3', 'cm³', 'cc'), ...eachAs(times(1000), 'l')]),
  viscosity: new Map([
    ...eachAs(times(1), '', 'mpa·s', 'mpas', 'mpa.s', 'cp', 'cps'),
    ...eachAs(times(1000), 'pa·s', 'pas', 'pa.s'),
  ]),
  time: new Map([
    ...eachAs(times(60_000), '', 'min'),
    ...eachAs(times(3_600_000), 'h'),
    ...eachAs(times(1000), 's'),
    ...eachAs(times(1), 'ms'),
  ]),
}

/** Binary noise off: 250.31 − 187.02 is 63.29. */
const tidy = (value: number): number => Number(value.toFixed(9))

/** The arithmetic library, fetched once, when the first sum needs it; only its parser, over plain numbers, is taken. */
const loadMath = once(async () => {
  const { create, parseDependencies = {} } = await import('mathjs/number')
  return create({ parseDependencies })
})

/** The worth of a sum, or nothing where it is not one. */
async function worthOfSum(text: string): Promise<number | undefined> {
  const { parse } = await loadMath()
  try {
    const worth = worthOf(parse(text))
    return worth !== undefined && Number.isFinite(worth) ? worth : undefined
  } catch (error) {
    if (error instanceof SyntaxError) return undefined
    throw error
  }
}

/** Walks the parsed sum itself, so that nothing but these five kinds of node is ever worked out. */
function worthOf(node: MathNode): number | undefined {
  if (isA<ConstantNode>(node, 'ConstantNode')) return typeof node.value === 'number' ? node.value : undefined
  if (isA<ParenthesisNode>(node, 'ParenthesisNode')) return worthOf(node.content)
  if (!isA<OperatorNode>(node, 'OperatorNode') || node.implicit) return undefined
  const [left, right] = node.args.map(worthOf)
  if (left === undefined) return undefined
  if (node.args.length === 1) return signed(node.fn, left)
  return right === undefined ? undefined : joined(node.fn, left, right)
}

const isA = <Node extends MathNode>(node: MathNode, type: Node['type']): node is Node => node.type === type

function signed(operation: string, value: number): number | undefined {
  if (operation === 'unaryMinus') return -value
  return operation === 'unaryPlus' ? value : undefined
}

function joined(operation: string, left: number, right: number): number | undefined {
  switch (operation) {
    case 'add':
      return left + right
    case 'subtract':
      return left - right
    case 'multiply':
      return left * right
    case 'divide':
      return left / right
    default:
      return undefined
  }
}
