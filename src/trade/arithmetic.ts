import { createUnitClass } from 'mathjs'
import { create, parseDependencies } from 'mathjs/number'

declare module 'mathjs' {
  /** The library's types name its units, but not the function that makes them out of these few of its others. */
  export const createUnitClass: (needs: object) => UnitCtor
}

/** Reads sums into a tree, over plain numbers. */
export const { parse } = create({ parseDependencies: parseDependencies ?? {} })

/** Stands for the library's fractions, in which it writes 5/9 of a kelvin: over plain numbers their quotient will do. */
class Share {
  readonly isFraction = true
  constructor(
    readonly n: number,
    readonly d: number,
  ) {}
  valueOf(): number {
    return this.n / this.d
  }
}

/** Stands for kinds of numbers that are not in use. */
class NoSuchNumber {}

const Unit = createUnitClass({
  config: { number: 'number' },
  isNumeric: (value: unknown) => typeof value === 'number',
  number: Number,
  format: String,
  addScalar: (one: number, other: number) => one + other,
  subtractScalar: (one: number, other: number) => one - other,
  multiplyScalar: (one: number, other: number) => one * other,
  divideScalar: (one: number, other: number) => one / other,
  equal: (one: number, other: number) => one === other,
  pow: Math.pow,
  abs: Math.abs,
  fix: Math.trunc,
  round: Math.round,
  Fraction: Share,
  BigNumber: NoSuchNumber,
  Complex: NoSuchNumber,
})

/** `value`, which is in the unit `from`, in the unit `to`: units as the library names them, both of one dimension. */
export const inUnit = (value: number, from: string, to: string): number => new Unit(value, from).toNumber(to)
