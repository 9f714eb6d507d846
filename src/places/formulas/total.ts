import type { FieldSpec } from '../../app/forms/field-spec'
import { readField } from '../../app/forms/read-fields'
import type { FormulaDraft } from './draft'

/** What the lines come to so far. Fields that cannot be read yet count nothing. */
export interface Total {
  /** Of the fixed shares and what is expected as needed. */
  readonly stated: number
  /** Left for the q.s. line; null where there is none. */
  readonly qs: number | null
  /** Lines whose share cannot be read yet, and so counts nothing. */
  readonly unread: number
  readonly byPhase: ReadonlyMap<string, number>
}

export function totalOf({ phases }: FormulaDraft): Total {
  const sums = phases.map(({ id, lines }) => [id, sum(lines.map(({ values }) => shareOf(values)))] as const)
  const stated = sum(sums.map(([, share]) => share))
  const filler = phases.find(({ lines }) => lines.some(({ values }) => values['amount.kind'] === 'qs'))
  const qs = filler ? tidy(1 - stated) : null
  const byPhase = new Map(sums.map(([id, share]) => [id, id === filler?.id ? tidy(share + (qs ?? 0)) : share] as const))
  const unread = phases.flatMap(({ lines }) => lines).filter(({ values }) => !isRead(values)).length
  return { stated, qs, unread, byPhase }
}

const percent: FieldSpec = { key: '', label: '', kind: 'number', percent: true }

/** The share that a line's texts state, 0 where they state none yet. */
export function shareOf(values: Readonly<Record<string, string>>): number {
  if (values['amount.kind'] === 'qs') return 0
  const read = readField(percent, textOf(values))
  return read.ok && typeof read.value === 'number' ? read.value : 0
}

const isRead = (values: Readonly<Record<string, string>>): boolean =>
  values['amount.kind'] === 'qs' || readField(percent, textOf(values)).ok

const textOf = (values: Readonly<Record<string, string>>): string =>
  values[values['amount.kind'] === 'as-needed' ? 'amount.expected' : 'amount.fraction'] ?? ''

const sum = (shares: readonly number[]): number => tidy(shares.reduce((all, share) => all + share, 0))

/** Binary noise off. */
const tidy = (value: number): number => Number(value.toFixed(12))
