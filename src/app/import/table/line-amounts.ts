import type { Micrograms } from '../../../trade/mass'
import { readMass } from '../../../trade/number-text'
import { accept, type Result, refuse } from '../../../trade/result'
import { type AmountText, readAmountText } from './amount-text'
import { headingUnit } from './headings'
import type { Mapping } from './mapping'
import type { RowProblem } from './table-problem'

/** How much of a line goes in, as fractions of the batch. */
export type LineAmount =
  | { readonly kind: 'fraction'; readonly fraction: number }
  | { readonly kind: 'qs'; readonly heldBack?: number }
  | { readonly kind: 'as-needed'; readonly expected: number; readonly min: number; readonly max: number }

/** A mass that is still to be set against the whole. */
export type CellAmount = LineAmount | { readonly kind: 'mass'; readonly massUg: Micrograms }

type CellProblem = RowProblem extends infer P ? (P extends RowProblem ? Omit<P, 'row'> : never) : never

/** The amount of a line by its columns: its share where there is such a column, else its mass. */
export function readLineAmount(
  cells: readonly string[],
  mapping: Mapping,
  headings: readonly string[],
): Result<CellAmount, CellProblem> {
  const percent = mapping.roles.indexOf('percent')
  const grams = mapping.roles.indexOf('grams')
  if (percent === -1) return readGrams(cells[grams] ?? '', grams, mapping, headings)
  const share = readShare(cells[percent] ?? '', percent, mapping)
  if (share.ok || share.refusal.code !== 'AMOUNT_MISSING' || grams === -1) return share
  // Where the share is left open the column of masses often says why: q.s.
  const other = readAmountText(cells[grams] ?? '', mapping.mark)
  return other.ok && other.value.kind === 'qs' ? accept({ kind: 'qs' }) : share
}

/** A figure of the column of shares as a fraction: of a line, or of a total row. */
export function readShare(text: string, column: number, mapping: Mapping): Result<LineAmount, CellProblem> {
  const read = readAmountText(text, mapping.mark)
  if (!read.ok) return refuse({ ...read.refusal, column })
  const amount = read.value
  switch (amount.kind) {
    case 'qs':
      return accept(
        amount.heldBack === undefined ? { kind: 'qs' } : { kind: 'qs', heldBack: share(amount.heldBack, mapping) },
      )
    case 'as-needed': {
      const [expected, min, max] = [amount.expected, amount.min, amount.max].map((each) => share(each, mapping))
      const inOrder =
        min !== undefined && expected !== undefined && max !== undefined && min <= expected && expected <= max
      return inOrder && max <= 1
        ? accept({ kind: 'as-needed', expected, min, max })
        : refuse({ code: 'AMOUNT_RANGE', text, column })
    }
    case 'number':
      return fractionOf(amount, text, column, mapping)
  }
}

function fractionOf(
  { value, unit }: Extract<AmountText, { kind: 'number' }>,
  text: string,
  column: number,
  mapping: Mapping,
): Result<LineAmount, CellProblem> {
  if (!['', '%', 'ppm', '% w/w', '%w/w'].includes(unit)) return refuse({ code: 'AMOUNT_UNIT', unit, text, column })
  if (value === 0) return refuse({ code: 'AMOUNT_ZERO', text, column })
  const fraction = unit === 'ppm' ? tidy(value / 1e6) : unit === '' ? share(value, mapping) : tidy(value / 100)
  return fraction > 1 ? refuse({ code: 'AMOUNT_OVER', text, column }) : accept({ kind: 'fraction', fraction })
}

function readGrams(
  text: string,
  column: number,
  mapping: Mapping,
  headings: readonly string[],
): Result<CellAmount, CellProblem> {
  const read = readAmountText(text, mapping.mark)
  if (!read.ok) return refuse({ ...read.refusal, column })
  const amount = read.value
  if (amount.kind === 'qs') return accept({ kind: 'qs' })
  if (amount.kind === 'as-needed') return refuse({ code: 'AMOUNT_OPEN', text, column })
  if (amount.value === 0) return refuse({ code: 'AMOUNT_ZERO', text, column })
  const unit = amount.unit === '' ? headingUnit(headings[column] ?? '') : (unitNames.get(amount.unit) ?? amount.unit)
  const mass = readMass(`${amount.value} ${unit}`)
  return mass.ok ? accept({ kind: 'mass', massUg: mass.value }) : refuse({ code: 'AMOUNT_UNIT', unit, text, column })
}

const unitNames: ReadonlyMap<string, string> = new Map([
  ['gr', 'g'],
  ['gm', 'g'],
  ['gram', 'g'],
  ['grams', 'g'],
  ['gramm', 'g'],
])

const share = (value: number, { scale }: Mapping): number => (scale === 'fraction' ? value : tidy(value / 100))

/** 1.33 % is 0.0133: as many digits as a double keeps of a typed decimal. */
const tidy = (value: number): number => Number(value.toPrecision(15))
