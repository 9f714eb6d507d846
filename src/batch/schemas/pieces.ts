import * as v from 'valibot'

/** Each piece's message is what was wanted there, in words: it completes "This should be …". */
const idWanted = 'an id of 1 to 100 letters, digits or . : _ -'
const massWanted = 'a mass in whole micrograms, up to one tonne'
const fractionWanted = 'a fraction from 0 to 1'
const dateWanted = 'a date such as 2026-06-30'
const momentWanted = 'a moment such as 2026-06-30T09:30:00+02:00'
const temperatureWanted = 'a temperature from −100 to 400 °C'

/** One tonne in micrograms: no bench holds more of one thing. */
const largestMassUg = 1e12

export const anId = v.pipe(v.string(idWanted), v.regex(/^[\w.:-]{1,100}$/u, idWanted))

/** A text of one line, not empty. */
export function words(longest = 200) {
  const wanted = `a text of 1 to ${longest} characters`
  return v.pipe(v.string(wanted), v.trim(), v.minLength(1, wanted), v.maxLength(longest, wanted))
}

/** A text that may be empty or long, with line breaks. */
export function prose(longest = 2000) {
  const wanted = `a text of at most ${longest} characters`
  return v.pipe(v.string(wanted), v.maxLength(longest, wanted))
}

export const aMass = v.pipe(
  v.number(massWanted),
  v.integer(massWanted),
  v.minValue(0, massWanted),
  v.maxValue(largestMassUg, massWanted),
)

/** A mass that a thing cannot be without, such as a readability. */
export const someMass = v.pipe(aMass, v.minValue(1, 'a mass above zero'))

/** Taken from stock or added to it. */
export const aMassChange = v.pipe(
  v.number(massWanted),
  v.integer(massWanted),
  v.minValue(-largestMassUg, massWanted),
  v.maxValue(largestMassUg, massWanted),
)

export const aFraction = v.pipe(v.number(fractionWanted), v.minValue(0, fractionWanted), v.maxValue(1, fractionWanted))

export const aTemperature = v.pipe(
  v.number(temperatureWanted),
  v.minValue(-100, temperatureWanted),
  v.maxValue(400, temperatureWanted),
)

export const aDate = v.pipe(v.string(dateWanted), v.isoDate(dateWanted))

/** ISO 8601, with or without an offset; a bare date counts too. */
export const aMoment = v.pipe(
  v.string(momentWanted),
  v.regex(/^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:\d{2})?)?$/, momentWanted),
)

export function numberBetween(low: number, high: number) {
  const wanted = `a number from ${low} to ${high}`
  return v.pipe(v.number(wanted), v.minValue(low, wanted), v.maxValue(high, wanted))
}

export function countUpTo(high: number) {
  const wanted = `a whole number from 1 to ${high}`
  return v.pipe(v.number(wanted), v.integer(wanted), v.minValue(1, wanted), v.maxValue(high, wanted))
}

export function oneOf<const O extends readonly [string, ...string[]]>(...options: O) {
  return v.picklist(options, `one of: ${options.join(', ')}`)
}

export function listOf<const S extends v.GenericSchema>(item: S, most: number) {
  const wanted = `a list of at most ${most}`
  return v.pipe(v.array(item, wanted), v.maxLength(most, wanted))
}

/** How the sample of a reading was made. */
export const aBasis = v.variant('kind', [
  v.object({ kind: v.literal('neat') }),
  v.object({ kind: v.literal('dilution'), fraction: numberBetween(0, 1) }),
])

export const aSwitch = v.boolean('true or false')

/** Limits where either end may be missing, but not in the wrong order. */
export const limits = v.pipe(
  v.object({ min: v.exactOptional(numberBetween(-1e9, 1e9)), max: v.exactOptional(numberBetween(-1e9, 1e9)) }),
  v.check(({ min, max }) => min === undefined || max === undefined || min <= max, 'a minimum at or below its maximum'),
)

/** Two ends, the first not above the second. */
export function rangeOf(end: v.GenericSchema<number>) {
  return v.pipe(
    v.object({ min: end, max: end }),
    v.check(({ min, max }) => min <= max, 'a minimum at or below its maximum'),
  )
}
