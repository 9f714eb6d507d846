import type { Check } from '../../batch/formula'
import { unitOf } from '../../batch/how-read'
import type { Measure } from '../../batch/stability-plan'

/** What a row of the pass asks for. */
export type RowKind = 'number' | 'viscosity' | 'density' | 'seen' | 'foam' | 'spin' | 'feel' | 'free'

/** One check of the pass, or something that no check asks for. */
export interface RestedRow {
  readonly key: string
  readonly kind: RowKind
  readonly check?: Measure | Check
  /** The planned step that a result fulfils. */
  readonly step?: string
}

/** Texts of one row to the letter, by field. */
export type RowTexts = (field: string) => string

/** Fields of its readings, the first one always. */
export function readingFields(text: RowTexts): readonly string[] {
  const count = Math.max(1, Number(text('count')) || 1)
  return Array.from({ length: count }, (_, index) => `reading.${index}`)
}

export const mostReadings = 12

/** The unit that stands behind a row's figure; undefined where it is asked for. */
export const unitOfRow = ({ check }: RestedRow): string | undefined => (check === undefined ? undefined : unitOf(check))

/** What a check asks for; an unnamed property without unit or limits is looked at. */
export function kindOfCheck({ property, unit, limits }: Measure): RowKind {
  switch (property) {
    case 'viscosity':
    case 'density':
    case 'foam':
    case 'feel':
      return property
    case 'centrifuge':
      return 'spin'
    case 'appearance':
    case 'colour':
    case 'odour':
      return 'seen'
    case 'other':
      return unit === undefined && limits === undefined ? 'seen' : 'number'
    default:
      return 'number'
  }
}
