import { signal } from '@preact/signals'
import { type Micrograms, microgramsFromGrams } from '../../trade/mass'
import { isSum, type NumberOptions, readDecimal, readMass } from '../../trade/number-text'
import type { Dimension, QuantityRefusal } from '../../trade/units'

/** What a typed text comes to. `sum` is the text where it was reckoned; `reckoning` while the arithmetic is fetched. */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'reckoning' }
  | { readonly kind: 'bad'; readonly refusal: QuantityRefusal }
  | { readonly kind: 'number'; readonly value: number; readonly sum?: string }

export interface Reckoner {
  /** A mass in µg; typed in grams, with one of our units, or as a sum of grams. */
  readonly mass: (text: string, options?: NumberOptions) => Typed
  /** A plain number in whatever unit the field says; where that has a dimension, with another unit of it too. */
  readonly number: (text: string, options?: NumberOptions, dimension?: Dimension) => Typed
}

type Worth = (
  text: string,
  dimension?: Dimension,
) => Promise<{ ok: true; value: number } | { ok: false; refusal: QuantityRefusal }>

const fetchWorth: Worth = async (...typed) => (await import('../../trade/read-typed')).readTyped(...typed)

/**
 * Reads typed texts. A sum, or a number with its unit, is worked out once, by the arithmetic that is fetched when the
 * first one is typed; whoever reads its worth is told when it is there.
 */
export function createReckoner(worthOf: Worth = fetchWorth): Reckoner {
  const worths = signal<ReadonlyMap<string, Typed>>(new Map())
  const asked = new Set<string>()

  const ask = (key: string, text: string, dimension?: Dimension) => {
    if (asked.has(key)) return
    asked.add(key)
    void worthOf(text, dimension).then((worth) => {
      const typed: Typed = worth.ok
        ? { kind: 'number', value: worth.value, sum: text }
        : { kind: 'bad', refusal: worth.refusal }
      worths.value = new Map(worths.peek()).set(key, typed)
    })
  }
  const sumOf = (
    text: string,
    options: NumberOptions,
    scale: (value: number) => number,
    dimension?: Dimension,
  ): Typed => {
    const key = `${dimension ?? ''} ${text}`
    const known = worths.value.get(key)
    if (known === undefined) {
      // A sum that ends in a sign is still being typed.
      if (!/[+\-−*×/÷(]\s*$/.test(text)) ask(key, text, dimension)
      return { kind: 'reckoning' }
    }
    if (known.kind !== 'number') return known
    const value = scale(known.value)
    if (value < 0 && options.negative === false) return { kind: 'bad', refusal: { code: 'NUMBER_NEGATIVE' } }
    if (value === 0 && options.zero === false) return { kind: 'bad', refusal: { code: 'NUMBER_ZERO' } }
    return { ...known, value }
  }

  const read = (
    text: string,
    options: NumberOptions,
    plain: typeof readMass | typeof readDecimal,
    scale: (value: number) => number,
    dimension?: Dimension,
  ): Typed => {
    const trimmed = text.trim()
    if (trimmed === '') return { kind: 'empty' }
    if (isSum(trimmed)) return sumOf(trimmed, options, scale)
    if (dimension && /\p{L}/u.test(trimmed)) return sumOf(trimmed, options, scale, dimension)
    const result = plain(trimmed, options)
    return result.ok ? { kind: 'number', value: result.value } : { kind: 'bad', refusal: result.refusal }
  }

  return {
    mass: (text, options = {}) => read(text, options, readMass, (grams): Micrograms => microgramsFromGrams(grams)),
    number: (text, options = {}, dimension) => read(text, options, readDecimal, (value) => value, dimension),
  }
}
