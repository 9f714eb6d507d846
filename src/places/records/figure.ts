import type { Format } from '../../app/format'

/** A reading as it is written, with thousands set apart by what is not the decimal mark. */
export function figure(value: number, format: Format, decimals?: number): string {
  const shown = format.number(value, decimals)
  const separator = shown.includes(',') || format.number(0.5).includes(',') ? '\u202f' : ','
  const [whole = '', ...rest] = shown.split(/(?=[.,])/)
  return whole.length < 4 ? shown : [whole.replace(/\B(?=(\d{3})+$)/g, separator), ...rest].join('')
}
