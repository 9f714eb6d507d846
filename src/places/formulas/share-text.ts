import type { Values } from '../../app/forms/field-spec'
import { type FieldRefusal, readField } from '../../app/forms/read-fields'
import { showNumber } from '../../app/forms/show-fields'
import type { Micrograms } from '../../trade/mass'
import { gramsFromMicrograms } from '../../trade/mass-ratio'
import { isSum, readMass, splitUnit } from '../../trade/number-text'
import { accept, type Result, refuse } from '../../trade/result'
import { shareKeys } from './line-fields'

/** What a share's text is read with: the usual batch that masses are shares of, and the worth of sums by their text. */
export interface ShareWorld {
  readonly sizeUg: Micrograms | null
  readonly sums: ReadonlyMap<string, number>
}

/** A share from 0 to 1, as "3", "3 %", "15 g", or a sum of those ("3/0.3") whose worth is known. */
export function readShare(text: string, world: ShareWorld): Result<number, FieldRefusal> {
  const plain = inPercent(text, world)
  if (!plain.ok) return plain
  // A field that is not optional reads as a number or not at all.
  return readField({ key: '', label: 'A share', kind: 'number', percent: true }, plain.value) as Result<
    number,
    FieldRefusal
  >
}

/** The texts of a line with every share in % and without arithmetic; what cannot be put so stays as it was typed. */
export function withShares(values: Values, world: ShareWorld): Values {
  const changed: Record<string, string> = {}
  for (const key of shareKeys) {
    const text = values[key]
    if (text === undefined || !/[^\d.,]/.test(text)) continue
    const plain = inPercent(text, world)
    if (plain.ok && plain.value !== text) changed[key] = plain.value
  }
  return Object.keys(changed).length === 0 ? values : { ...values, ...changed }
}

/** Why a share cannot be put in %; empty where each can. */
export function shareErrors(values: Values, world: ShareWorld): Record<string, FieldRefusal> {
  const errors: Record<string, FieldRefusal> = {}
  for (const key of shareKeys) {
    const read = inPercent(values[key] ?? '', world)
    if (!read.ok) errors[key] = read.refusal
  }
  return errors
}

/** The sum in a text, apart from its unit; null where there is none to work out. */
export function sumIn(text: string): string | null {
  const { number } = splitUnit(text)
  return isSum(number) ? number : null
}

/** A share as text in % of the batch, or in g of the usual one. */
export function showShare(share: number, unit: '%' | 'g', sizeUg: Micrograms | null, mark: '.' | ','): string {
  return unit === 'g' && sizeUg !== null
    ? showNumber(gramsFromMicrograms(Math.round(share * sizeUg)), mark)
    : showNumber(share * 100, mark)
}

/** As the text that a percent field reads; a text that is no number at all is left for that field to refuse. */
function inPercent(text: string, { sizeUg, sums }: ShareWorld): Result<string, FieldRefusal> {
  const { number, unit } = splitUnit(text)
  const worth = isSum(number) ? sums.get(number) : undefined
  const figure = worth === undefined ? number : showNumber(worth, '.')
  if (unit === '' || unit === '%') return accept(figure)
  if (number === '') return accept(text)
  const mass = readMass(`${figure} ${unit}`, { negative: false })
  if (!mass.ok) {
    if (mass.refusal.code !== 'NUMBER_LETTERS') return mass
    return isKnownMass(unit) ? mass : refuse({ code: 'FIELD_UNIT_UNKNOWN', unit })
  }
  if (sizeUg === null || sizeUg === 0) return refuse({ code: 'FIELD_NEEDS_SIZE' })
  return accept(showNumber((mass.value / sizeUg) * 100, '.'))
}

const isKnownMass = (unit: string): boolean => readMass(`1 ${unit}`).ok
