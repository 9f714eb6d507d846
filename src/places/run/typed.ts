import { signal } from '@preact/signals'
import { type Micrograms, microgramsFromGrams } from '../../trade/mass'
import { isSum, type NumberOptions, type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'

/** What a typed text comes to. `sum` is the text where it was reckoned; `reckoning` while the arithmetic is fetched. */
export type Typed =
  | { readonly kind: 'empty' }
  | { readonly kind: 'reckoning' }
  | { readonly kind: 'bad'; readonly refusal: NumberRefusal }
  | { readonly kind: 'number'; readonly value: number; readonly sum?: string }

export interface Reckoner {
  /** A mass in µg; typed in grams, with one of our units, or as a sum of grams. */
  readonly mass: (text: string, options?: NumberOptions) => Typed
  /** A plain number in whatever unit the field says. */
  readonly number: (text: string, options?: NumberOptions) => Typed
}

type SumsWorth = (text: string) => Promise<{ ok: true; value: number } | { ok: false; refusal: NumberRefusal }>

const fetchSums: SumsWorth = async (text) => (await import('../../trade/units')).evaluateSum(text)

/**
 * Reads typed texts. A sum is worked out once, by the arithmetic that is fetched when the first one is typed; whoever
 * reads its worth is told when it is there.
 */
export function createReckoner(worthOf: SumsWorth = fetchSums): Reckoner {
  const worths = signal<ReadonlyMap<string, Typed>>(new Map())
  const asked = new Set<string>()

  const ask = (text: string) => {
    if (asked.has(text)) return
    asked.add(text)
    void worthOf(text).then((worth) => {
      const typed: Typed = worth.ok
        ? { kind: 'number', value: worth.value, sum: text }
        : { kind: 'bad', refusal: worth.refusal }
      worths.value = new Map(worths.peek()).set(text, typed)
    })
  }
  const sumOf = (text: string, options: NumberOptions, scale: (value: number) => number): Typed => {
    const known = worths.value.get(text)
    if (known === undefined) {
      // A sum that ends in a sign is still being typed.
      if (!/[+\-−*×/÷(]\s*$/.test(text)) ask(text)
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
  ): Typed => {
    const trimmed = text.trim()
    if (trimmed === '') return { kind: 'empty' }
    if (isSum(trimmed)) return sumOf(trimmed, options, scale)
    const result = plain(trimmed, options)
    return result.ok ? { kind: 'number', value: result.value } : { kind: 'bad', refusal: result.refusal }
  }

  return {
    mass: (text, options = {}) => read(text, options, readMass, (grams): Micrograms => microgramsFromGrams(grams)),
    number: (text, options = {}) => read(text, options, readDecimal, (value) => value),
  }
}
