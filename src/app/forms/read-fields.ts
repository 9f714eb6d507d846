import { type NumberRefusal, readDecimal, readMass } from '../../trade/number-text'
import { accept, type Result, refuse } from '../../trade/result'
import { dimensionOf, isQuantity } from '../../trade/units'
import type { FieldSpec, Values } from './field-spec'

export type FieldRefusal =
  | NumberRefusal
  | { readonly code: 'FIELD_EMPTY'; readonly label: string }
  | { readonly code: 'FIELD_TOO_LONG'; readonly longest: number }
  | { readonly code: 'FIELD_TOO_MANY'; readonly most: number }
  | { readonly code: 'FIELD_BELOW' | 'FIELD_ABOVE'; readonly limit: number; readonly unit: string }
  | { readonly code: 'FIELD_NOT_WHOLE' | 'FIELD_NOT_A_DATE' | 'FIELD_NOT_CHOSEN' | 'FIELD_ONE_OF_TWO' }
  | { readonly code: 'FIELD_UNIT_UNKNOWN'; readonly unit: string }
  | { readonly code: 'FIELD_OTHER_UNIT'; readonly unit: string }
  | { readonly code: 'FIELD_NEEDS_SIZE' | 'FIELD_TWICE' | 'FIELD_UNORDERED' }
  | { readonly code: 'PART_WITHOUT_SHARE'; readonly line: number }

/** What could not be read, by field. */
export type FieldErrors = Readonly<Record<string, FieldRefusal>>

type Plain = Record<string, unknown>

/**
 * Whether a refusal is worth a word while somebody still types: not of what is empty yet, nor of a sum half typed or a
 * figure in another unit, which leaving the field settles.
 */
export const isSaidWhileTyping = ({ code }: FieldRefusal): boolean => !silent.has(code)

const silent: ReadonlySet<FieldRefusal['code']> = new Set([
  'FIELD_EMPTY',
  'FIELD_NOT_CHOSEN',
  'FIELD_OTHER_UNIT',
  'NUMBER_EMPTY',
  'NUMBER_SUM_UNCLEAR',
])

/**
 * The document that the typed texts make: `base` with the fields of the form put in (or taken out where an optional one
 * is empty). All the fields are read, so that every wrong one is said at once.
 */
export function readFields(specs: readonly FieldSpec[], values: Values, base: object = {}): Result<Plain, FieldErrors> {
  let document: Plain = { ...base }
  const errors: Record<string, FieldRefusal> = {}
  for (const spec of specs) {
    const read = readField(spec, values[spec.key] ?? '')
    if (!read.ok) errors[spec.key] = read.refusal
    else document = put(document, spec.key.split('.'), read.value)
  }
  return Object.keys(errors).length === 0 ? accept(document) : refuse(errors)
}

/** The value of one field; undefined where an optional one is empty. */
export function readField(spec: FieldSpec, typed: string): Result<unknown, FieldRefusal> {
  const text = typed.trim()
  if (spec.kind === 'switch') return accept(text === 'yes' ? true : spec.optional ? undefined : false)
  if (spec.kind === 'list') return readList(spec, text)
  if (spec.kind === 'many') return readMany(spec, text)
  if (text === '') return spec.optional ? accept(undefined) : refuse({ code: 'FIELD_EMPTY', label: spec.label })
  switch (spec.kind) {
    case 'text':
      return text.length > (spec.longest ?? 200)
        ? refuse({ code: 'FIELD_TOO_LONG', longest: spec.longest ?? 200 })
        : accept(text)
    case 'number':
      return readNumber(spec, text)
    case 'mass':
      return readMass(text, { negative: spec.negative ?? false, zero: spec.zero ?? true })
    case 'date':
      return isDate(text) ? accept(text) : refuse({ code: 'FIELD_NOT_A_DATE' })
    case 'choice':
      return spec.options.some(({ value }) => value === text) ? accept(text) : refuse({ code: 'FIELD_NOT_CHOSEN' })
    case 'parts':
      return readParts(text, spec.shareNeeded === true)
  }
}

function readNumber(spec: Extract<FieldSpec, { kind: 'number' }>, text: string): Result<number, FieldRefusal> {
  const unit = spec.percent ? '%' : (spec.unit ?? '')
  const plain = spec.percent ? text.replace(/\s*%$/, '') : text
  const dimension = spec.difference ? undefined : dimensionOf(unit)
  if (dimension && isQuantity(plain, dimension)) return refuse({ code: 'FIELD_OTHER_UNIT', unit })
  const read = readDecimal(plain)
  if (!read.ok) return read
  const { min = spec.percent ? 0 : undefined, max = spec.percent ? 100 : undefined } = spec
  if (min !== undefined && read.value < min) return refuse({ code: 'FIELD_BELOW', limit: min, unit })
  if (max !== undefined && read.value > max) return refuse({ code: 'FIELD_ABOVE', limit: max, unit })
  if (spec.whole && !Number.isInteger(read.value)) return refuse({ code: 'FIELD_NOT_WHOLE' })
  return accept(spec.percent ? fromPercent(read.value) : read.value)
}

function readList(spec: Extract<FieldSpec, { kind: 'list' }>, text: string): Result<unknown, FieldRefusal> {
  const { longest = 300, most = 60 } = spec
  const entries = linesOf(text)
  if (entries.length > most) return refuse({ code: 'FIELD_TOO_MANY', most })
  if (entries.some((entry) => entry.length > longest)) return refuse({ code: 'FIELD_TOO_LONG', longest })
  return accept(entries.length === 0 && spec.optional ? undefined : entries)
}

/** An option that has gone since is left out. */
function readMany(spec: Extract<FieldSpec, { kind: 'many' }>, text: string): Result<unknown, FieldRefusal> {
  const chosen = linesOf(text).filter((value) => spec.options.some((option) => option.value === value))
  return accept(chosen.length === 0 && spec.optional ? undefined : chosen)
}

/** A single name without a number is the whole; of several each needs its percentage. */
function readParts(text: string, shareNeeded: boolean): Result<unknown, FieldRefusal> {
  const lines = linesOf(text)
  const parts: { name: string; fraction: number }[] = []
  for (const [index, line] of lines.entries()) {
    const [, name = line, share] = /^(.*[^\s:;=])[\s:;=]+([\d.,]+)\s*%?$/.exec(line) ?? []
    if (share === undefined && (shareNeeded || lines.length > 1))
      return refuse({ code: 'PART_WITHOUT_SHARE', line: index + 1 })
    if (name.length > 200) return refuse({ code: 'FIELD_TOO_LONG', longest: 200 })
    const read = readDecimal(share ?? '100')
    if (!read.ok) return read
    if (read.value > 100) return refuse({ code: 'FIELD_ABOVE', limit: 100, unit: '%' })
    parts.push({ name, fraction: fromPercent(read.value) })
  }
  return accept(parts)
}

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')

/** 1.33 % is 0.0133: as many digits as a double keeps of a typed decimal. */
const fromPercent = (percent: number): number => Number((percent / 100).toPrecision(15))

function isDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text)?.map(Number) ?? []
  if (year === undefined || month === undefined || day === undefined) return false
  return day >= 1 && month >= 1 && month <= 12 && day <= new Date(Date.UTC(year, month, 0)).getUTCDate()
}

/** A copy with one value set at a path; undefined takes it out, and the parent with it once that is empty. */
function put(document: Plain, [key = '', ...rest]: readonly string[], value: unknown): Plain {
  const { [key]: old, ...others } = document
  if (rest.length === 0) return value === undefined ? others : { ...others, [key]: value }
  const inner = put(isPlain(old) ? old : {}, rest, value)
  return Object.keys(inner).length === 0 ? others : { ...others, [key]: inner }
}

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null && !Array.isArray(value)
