import type { Format } from '../../app/format'
import type { StartRefusal } from '../../app/refusals/forms-start'
import { type Micrograms, massFromUnit, massUnits, roundToStep } from '../../trade/mass'
import { isSum, readMass, splitUnit } from '../../trade/number-text'
import { accept, type Result, refuse } from '../../trade/result'
import { evaluateSum } from '../../trade/typed-sum'
import { dimensionOf, massOfVolume, type QuantityRefusal, readQuantity } from '../../trade/units'
import type { SizeUnit } from './choice'

/** One tonne: beyond it a typing slip is likelier than a batch. */
const largestUg = 1_000 * massUnits.kg
const smallestUg = massUnits.g / 1_000

type ReadSize = Result<Micrograms, QuantityRefusal | StartRefusal>

/** What the field holds: a mass at once, or a sum or a volume that is being worked out. */
export type SizeReading = ReadSize | { readonly ok: 'wait'; readonly text: string }

/** A typed size in the unit beside the field, unless a unit stands in the text itself: "1.2 kg". */
export function readSize(text: string, unit: SizeUnit): SizeReading {
  const plain = text.trim()
  const { number, unit: typed } = splitUnit(plain)
  if (isSum(number) || isVolume(plain)) return { ok: 'wait', text: plain }
  const read = readMass(typed === '' && number !== '' ? `${number} ${unit}` : plain, limits)
  return read.ok || read.refusal.code !== 'NUMBER_ABSURD' ? read : refuse(absurd)
}

/**
 * The worth of a size typed as a sum, such as 2*250 or 1.5+0.25 kg, or as a volume, 500 mL, which weighs what the density
 * of the product (g/mL; null where none is stated) makes it.
 */
export async function workOutSize(text: string, unit: SizeUnit, densityGPerMl: number | null): Promise<ReadSize> {
  const { number, unit: typed } = splitUnit(text)
  const sum = await evaluateSum(number, { negative: false, zero: false })
  if (!sum.ok) return sum
  if (isVolume(text)) {
    if (densityGPerMl === null) return refuse({ code: 'START_DENSITY_UNKNOWN' })
    const volume = await readQuantity(`${sum.value} ${typed}`, 'volume')
    return volume.ok ? withinSizes(massOfVolume(volume.value, densityGPerMl)) : volume
  }
  const known = isUnit(typed) ? typed : typed === '' ? unit : undefined
  return known === undefined ? refuse({ code: 'NUMBER_LETTERS', text }) : withinSizes(massFromUnit(sum.value, known))
}

/** Whether a size is typed as a volume. */
export const isVolume = (text: string): boolean => dimensionOf(splitUnit(text).unit) === 'volume'

function withinSizes(sizeUg: Micrograms): ReadSize {
  if (sizeUg > largestUg) return refuse(absurd)
  return sizeUg < smallestUg ? refuse({ code: 'NUMBER_ZERO' }) : accept(sizeUg)
}

/** Half, once and twice the usual size. */
export const sizeChips = (usualUg: Micrograms): readonly Micrograms[] => [Math.round(usualUg / 2), usualUg, usualUg * 2]

/** The next round size: about a tenth up or down. */
export function nudge(sizeUg: Micrograms, direction: 1 | -1): Micrograms {
  const stepUg = roundPart(direction === -1 ? sizeUg * 0.999 : sizeUg)
  const next = roundToStep(sizeUg, stepUg) + direction * stepUg
  return next > 0 ? Math.min(next, largestUg) : sizeUg
}

/** Two figures, upward: what a person would set as a batch size. */
export function roundedUp(sizeUg: Micrograms): Micrograms {
  const figure = 10 ** Math.max(Math.floor(Math.log10(sizeUg)) - 1, 0)
  return Math.ceil(sizeUg / figure) * figure
}

/** A mass as the size field takes it: in the unit given, without needless noughts. */
export const sizeText = (sizeUg: Micrograms, unit: SizeUnit): string =>
  String(Number((sizeUg / massUnits[unit]).toPrecision(12)))

/** A size in words, without needless noughts: "500 g", "1.5 kg". */
export const shortMass = (massUg: Micrograms, { number }: Pick<Format, 'number'>): string =>
  massUg >= massUnits.kg ? `${number(massUg / massUnits.kg)} kg` : `${number(massUg / massUnits.g)} g`

const absurd = { code: 'START_SIZE_ABSURD', largestUg } as const
const limits = { negative: false, zero: false, max: largestUg } as const

const isUnit = (text: string): text is SizeUnit => ['g', 'kg', 'mg', 'oz', 'lb'].includes(text.toLowerCase())

function roundPart(sizeUg: Micrograms): Micrograms {
  const tenth = sizeUg / 10
  const magnitude = 10 ** Math.floor(Math.log10(tenth))
  const lead = tenth / magnitude
  return Math.max(1, (lead >= 5 ? 5 : lead >= 2.5 ? 2.5 : 1) * magnitude)
}
