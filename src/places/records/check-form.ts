import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { CheckRefusal } from '../../app/refusals/forms-records'
import type { Check } from '../../batch/formula'
import { needsUnit, unitOf } from '../../batch/how-read'
import { msOf } from '../../batch/instant'
import type { Intention } from '../../batch/intention'
import { isoOf } from '../../batch/iso-of'
import type { BatchRecord } from '../../batch/record'
import type { NumberRefusal } from '../../trade/number-text'
import { readDecimal } from '../../trade/number-text'

/** What is half-entered of a check. Everything is text, so that nothing typed is lost. */
export interface CheckDraft {
  readonly check: string
  readonly value: string
  /** Only where the check names none. */
  readonly unit: string
  readonly seen: string
  readonly good: 'yes' | 'no' | ''
  readonly sampleC: string
  /** Empty for the batch itself; else how the jar was kept. */
  readonly conditions: string
  readonly when: 'now' | 'earlier'
  /** Local, as the date and time field writes it: 2026-11-24T09:30. */
  readonly moment: string
  readonly reason: string
}

export type CheckField = 'check' | 'value' | 'seen' | 'good' | 'sampleC' | 'moment' | 'reason'
export type CheckProblem = { readonly field: CheckField; readonly refusal: CheckRefusal | NumberRefusal }

export interface CheckForm {
  readonly draft: ReadonlySignal<CheckDraft>
  readonly chosen: ReadonlySignal<Check | undefined>
  readonly change: (part: Partial<CheckDraft>) => void
  readonly problem: ReadonlySignal<CheckProblem | null>
  /** The intention, or null with `problem` set. */
  readonly read: () => Extract<Intention, { do: 'measure' }> | null
}

interface FormWorld {
  readonly nowMs: () => number
  readonly offsetMinutes: () => number
}

/** A check of the specification entered from the record, today or late. */
export function createCheckForm(record: BatchRecord, world: FormWorld): CheckForm {
  const checks = record.header.revision.specification
  const first = record.results.missing.find((check) => check.when === 'after-rest') ?? checks.at(-1)
  const draft = signal<CheckDraft>({ ...empty, check: first?.id ?? '' })
  const problem = signal<CheckProblem | null>(null)
  const chosen = computed(() => checks.find((check) => check.id === draft.value.check))
  return {
    draft,
    chosen,
    problem,
    change: (part) => {
      draft.value = { ...draft.value, ...part }
      problem.value = null
    },
    read: () => {
      const answer = readCheck(draft.value, chosen.value, record, world)
      if ('field' in answer) {
        problem.value = answer
        return null
      }
      return answer
    },
  }
}

const empty: CheckDraft = {
  check: '',
  value: '',
  unit: '',
  seen: '',
  good: '',
  sampleC: '',
  conditions: '',
  when: 'now',
  moment: '',
  reason: '',
}

/** Whether the unit of a check's figure has to be said with it. */
export const asksUnit = (check: Check | undefined): boolean =>
  check !== undefined && unitOf(check) === undefined && needsUnit(check.property)

/** True for what is read off an instrument, false for what is looked at or smelled. */
export const isNumber = (check: Check | undefined): boolean => check !== undefined && !looked.has(check.property)

const looked: ReadonlySet<Check['property']> = new Set(['appearance', 'colour', 'odour', 'centrifuge'])

type Measure = Extract<Intention, { do: 'measure' }>

function readCheck(
  draft: CheckDraft,
  check: Check | undefined,
  record: BatchRecord,
  world: FormWorld,
): Measure | CheckProblem {
  if (check === undefined) return { field: 'check', refusal: { code: 'CHECK_NOT_CHOSEN' } }
  const seen = isNumber(check) ? readValue(draft) : readSeen(draft)
  if ('field' in seen) return seen
  const late = draft.when === 'earlier' ? readMoment(draft, record, world) : null
  if (late !== null && 'field' in late) return late
  const step = stepOf(check, draft, record)
  const unit = unitOf(check) ?? (draft.unit.trim() || undefined)
  return {
    do: 'measure',
    result: {
      property: check.property,
      check: check.id,
      label: check.label,
      ...(step === undefined ? {} : { step }),
      ...(isNumber(check) && unit !== undefined ? { unit } : {}),
      ...(check.basis === undefined ? {} : { basis: check.basis }),
      ...(draft.conditions.trim() === '' ? {} : { conditions: draft.conditions.trim() }),
      ...seen,
    },
    ...(late ?? {}),
  }
}

function readValue(draft: CheckDraft): { value: number; sampleC?: number } | CheckProblem {
  const value = readDecimal(draft.value, { negative: false })
  if (!value.ok) return { field: 'value', refusal: value.refusal }
  if (draft.sampleC.trim() === '') return { value: value.value }
  const sampleC = readDecimal(draft.sampleC)
  return sampleC.ok ? { value: value.value, sampleC: sampleC.value } : { field: 'sampleC', refusal: sampleC.refusal }
}

function readSeen(draft: CheckDraft): { text: string; good: boolean } | CheckProblem {
  if (draft.seen.trim() === '') return { field: 'seen', refusal: { code: 'CHECK_NOT_SEEN' } }
  if (draft.good === '') return { field: 'good', refusal: { code: 'CHECK_NOT_JUDGED' } }
  return { text: draft.seen.trim(), good: draft.good === 'yes' }
}

/** What was read earlier than it is entered: when, and why so late. */
export interface Late {
  readonly late?: NonNullable<Measure['late']>
}

export function readMoment(
  draft: Pick<CheckDraft, 'moment' | 'reason'>,
  record: Pick<BatchRecord, 'opened'>,
  { nowMs, offsetMinutes }: FormWorld,
): Late | CheckProblem {
  const localMs = msOf(draft.moment)
  if (Number.isNaN(localMs)) return { field: 'moment', refusal: { code: 'CHECK_MOMENT_MISSING' } }
  const atMs = localMs - offsetMinutes() * 60_000
  if (atMs > nowMs()) return { field: 'moment', refusal: { code: 'CHECK_IN_FUTURE' } }
  if (record.opened !== null && atMs < record.opened.atMs)
    return { field: 'moment', refusal: { code: 'CHECK_BEFORE_BATCH' } }
  if (draft.reason.trim() === '') return { field: 'reason', refusal: { code: 'CHECK_REASON_MISSING' } }
  return { late: { occurredAt: isoOf(atMs, offsetMinutes()), reason: draft.reason.trim() } }
}

/** The planned step that this reading fulfils; a kept jar and a repeated reading fulfil none. */
function stepOf(check: Check, draft: CheckDraft, record: BatchRecord): string | undefined {
  if (draft.conditions.trim() !== '') return undefined
  const row = record.steps.find(({ planned }) => planned.step.kind === 'measure' && planned.step.check === check.id)
  return row && !row.finished ? row.planned.id : undefined
}
