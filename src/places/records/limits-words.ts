import type { Format } from '../../app/format'
import type { Check } from '../../batch/formula'
import { figure } from './figure'

/** "4.9–5.3", "at least 8,000", or what the check says in words. */
export function limitsWords(check: Pick<Check, 'limits' | 'expected'> | undefined, format: Format): string {
  const { min, max } = check?.limits ?? {}
  if (min !== undefined && max !== undefined) return `${figure(min, format)}–${figure(max, format)}`
  if (min !== undefined) return `at least ${figure(min, format)}`
  if (max !== undefined) return `at most ${figure(max, format)}`
  return check?.expected ?? ''
}
