import { gramsFromMicrograms } from '../../trade/mass-ratio'
import type { FieldSpec, Values } from './field-spec'

/** The texts of a document's fields, as a person would have typed them. */
export function showFields(specs: readonly FieldSpec[], document: object, decimalMark: '.' | ','): Values {
  return Object.fromEntries(specs.map((spec) => [spec.key, showField(spec, at(document, spec.key), decimalMark)]))
}

function showField(spec: FieldSpec, value: unknown, mark: '.' | ','): string {
  if (value === undefined || value === null) return ''
  switch (spec.kind) {
    case 'number':
      return typeof value === 'number' ? showNumber(spec.percent ? value * 100 : value, mark) : ''
    case 'mass':
      return typeof value === 'number' ? showNumber(gramsFromMicrograms(value), mark) : ''
    case 'switch':
      return value === true ? 'yes' : ''
    case 'list':
    case 'many':
      return Array.isArray(value) ? value.join('\n') : ''
    case 'parts':
      return Array.isArray(value)
        ? value.map((part) => showPart(part, mark, value.length === 1 && spec.shareNeeded !== true)).join('\n')
        : ''
    case 'text':
    case 'date':
    case 'choice':
      return String(value)
  }
}

/** Without the noise of binary fractions and without an exponent. */
export function showNumber(value: number, mark: '.' | ','): string {
  const [plain = ''] = value.toFixed(10).split(/\.?0+$/)
  return plain.replace('.', mark)
}

/** A single name needs no percentage; of several each has its own. */
function showPart(part: unknown, mark: '.' | ',', isAlone: boolean): string {
  const { name, fraction } = part as { name: string; fraction: number }
  // A name that ends in a number (CI 77891) would be read as a name and its percentage.
  const isPlain = isAlone && fraction === 1 && !/[\s:;=][\d.,]+\s*%?$/.test(name)
  return isPlain ? name : `${name} ${showNumber(fraction * 100, mark)}`
}

const at = (document: object, path: string): unknown =>
  path.split('.').reduce<unknown>((inner, key) => (inner as Record<string, unknown> | undefined)?.[key], document)
