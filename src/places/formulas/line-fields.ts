import type { FieldOption, FieldSpec } from '../../app/forms/field-spec'
import type { Options } from './fields'

const amountKinds: readonly FieldOption[] = [
  { value: 'fraction', label: 'a fixed share' },
  { value: 'qs', label: 'q.s., up to 100 %' },
  { value: 'as-needed', label: 'as needed' },
]

/** The fields of a line, by how much of it goes in. */
export function lineFields(kind: string, options: Options): readonly FieldSpec[] {
  return [
    { key: 'materialId', label: 'Material', kind: 'choice', options: options.materials, find: true },
    { key: 'amount.kind', label: 'How much', kind: 'choice', options: amountKinds },
    ...amountFields(kind),
    {
      key: 'tolerance.relative',
      label: 'Tolerance of the weighing, ±',
      hint: 'of the target; 1 % if empty',
      kind: 'number',
      percent: true,
      optional: true,
    },
    { key: 'tolerance.absoluteUg', label: 'or tolerance, ± in g', kind: 'mass', zero: false, optional: true },
    { key: 'assayAssumed', label: 'Active matter it was written for', kind: 'number', percent: true, optional: true },
    { key: 'range.min', label: 'Finished product, at least', kind: 'number', percent: true, optional: true },
    { key: 'range.max', label: 'Finished product, at most', kind: 'number', percent: true, optional: true },
    {
      key: 'locksAfter',
      label: 'Too late for more of it after',
      kind: 'choice',
      options: options.steps,
      find: true,
      optional: true,
    },
    { key: 'fixedOrder', label: 'Goes in after the lines above it', kind: 'switch', optional: true },
  ]
}

/** Keys of a line that hold shares: each may be typed in %, or in g of the usual batch. */
export const shareKeys = ['amount.fraction', 'amount.expected', 'amount.min', 'amount.max', 'amount.heldBack'] as const

/** The share that stands in a line's row; nothing for a q.s. line, whose share is worked out. */
export function rowKeyOf(kind: string | undefined): 'amount.fraction' | 'amount.expected' | null {
  if (kind === 'qs') return null
  return kind === 'as-needed' ? 'amount.expected' : 'amount.fraction'
}

function amountFields(kind: string): readonly FieldSpec[] {
  switch (kind) {
    case 'qs':
      return [
        {
          key: 'amount.heldBack',
          label: 'Held back',
          hint: 'of the batch, for rinses and make-up; 3 % if empty',
          kind: 'number',
          percent: true,
          optional: true,
        },
      ]
    case 'as-needed':
      return [
        { key: 'amount.expected', label: 'Expected', kind: 'number', percent: true },
        { key: 'amount.min', label: 'Least', kind: 'number', percent: true },
        { key: 'amount.max', label: 'Most', kind: 'number', percent: true },
      ]
    default:
      return [{ key: 'amount.fraction', label: 'Share of the batch', kind: 'number', percent: true }]
  }
}
