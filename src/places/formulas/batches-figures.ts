import type { Format } from '../../app/format'
import type { ComparedRow } from '../../batch/compare-batches'

/** A figure of a row with its unit, as finely as its size asks for. */
export function rowFigure({ unit, kind }: Pick<ComparedRow, 'unit' | 'kind'>, value: number, format: Format): string {
  const decimals = kind === 'share' ? 3 : Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 20 ? 1 : 2
  const shown = format.number(Number(value.toFixed(decimals)))
  return unit === '' ? shown : `${shown} ${unit}`
}

export const limitsOff = ({ limits }: Pick<ComparedRow, 'limits'>, value: number): boolean =>
  value < (limits?.min ?? value) || value > (limits?.max ?? value)
