import { type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import type { Intention } from '../../batch/intention'
import type { Bodies } from '../../batch/kinds'
import type { BatchRecord } from '../../batch/record'
import { type Late, readMoment } from './check-form'
import { type RowProblem, readRow } from './rested-result'
import { kindOfCheck, type RestedRow, type RowTexts } from './rested-row'

export interface RestedForm {
  readonly rows: ReadonlySignal<readonly RestedRow[]>
  readonly textsOf: (row: string) => RowTexts
  readonly set: (row: string, field: string, text: string) => void
  /** A row for something that the specification does not ask for. */
  readonly addFree: () => void
  readonly problem: ReadonlySignal<RowProblem | null>
  /** What was entered of all rows, or null with `problem` set. */
  readonly read: () => Extract<Intention, { do: 'measure-all' }> | null
  /** What a row comes to so far; null while it cannot be read or is empty. */
  readonly soFar: (row: RestedRow) => Bodies['measured'] | null
  /** Reads what was typed before a reload. */
  readonly restore: () => Promise<void>
  readonly forget: () => void
}

type Texts = Readonly<Record<string, string>>

/** The texts of the whole pass that belong to no row. */
export const aboutAll = ''

/** Everything that is due of one batch, entered in one pass and kept as typed until it is recorded. */
export function createRestedForm(record: BatchRecord, app: Pick<App, 'drafts' | 'clock'>): RestedForm {
  const draftKey = `checks:${record.header.id}`
  const texts = signal<Texts>({})
  const rows = signal<readonly RestedRow[]>(rowsOf(record))
  const problem = signal<RowProblem | null>(null)
  const textsOf =
    (row: string): RowTexts =>
    (field) =>
      texts.value[`${row} ${field}`] ?? ''
  const put = (next: Texts) => {
    texts.value = next
    void app.drafts.write(draftKey, JSON.stringify(next))
  }
  const addFree = (count = Number(textsOf(aboutAll)('free')) + 1) => {
    put({ ...texts.value, [`${aboutAll} free`]: String(count) })
    rows.value = [...rowsOf(record), ...freeRows(count)]
  }
  return {
    rows,
    textsOf,
    set: (row, field, text) => {
      put({ ...texts.value, [`${row} ${field}`]: text })
      problem.value = null
    },
    addFree: () => addFree(),
    problem,
    read: () => {
      problem.value = null
      const results: Bodies['measured'][] = []
      for (const row of rows.value) {
        const read = readRow(row, textsOf(row.key))
        if (read !== null && 'refusal' in read) {
          problem.value = read
          return null
        }
        if (read !== null) results.push(read)
      }
      const late = lateOf(textsOf(aboutAll), record, app.clock)
      if ('refusal' in late) {
        problem.value = { row: aboutAll, field: late.field, refusal: late.refusal }
        return null
      }
      if (results.length === 0) {
        problem.value = { row: aboutAll, field: 'all', refusal: { code: 'CHECKS_EMPTY' } }
        return null
      }
      return { do: 'measure-all', results, ...late }
    },
    soFar: (row) => {
      const read = readRow(row, textsOf(row.key))
      return read === null || 'refusal' in read ? null : read
    },
    restore: async () => {
      const kept = textsIn(await app.drafts.read(draftKey))
      texts.value = { ...kept, ...texts.value }
      rows.value = [...rowsOf(record), ...freeRows(Number(textsOf(aboutAll)('free')))]
    },
    forget: () => void app.drafts.write(draftKey, null),
  }
}

/** What is due; once everything was read, every check of the rest again. */
function rowsOf({ results, header, steps }: BatchRecord): readonly RestedRow[] {
  const isRested = ({ when }: { when: string }): boolean => when === 'after-rest'
  const due = results.missing.filter(isRested)
  return (due.length > 0 ? due : header.revision.specification.filter(isRested)).map((check) => {
    const step = steps.find(
      ({ planned, finished }) => !finished && planned.step.kind === 'measure' && planned.step.check === check.id,
    )
    return { key: check.id, kind: kindOfCheck(check), check, ...(step === undefined ? {} : { step: step.planned.id }) }
  })
}

const freeRows = (count: number): readonly RestedRow[] =>
  Array.from({ length: count }, (_, index) => ({ key: `free ${index + 1}`, kind: 'free' as const }))

function lateOf(
  text: RowTexts,
  record: BatchRecord,
  clock: App['clock'],
): Late | Pick<RowProblem, 'field' | 'refusal'> {
  if (text('when') !== 'earlier') return {}
  const world = { nowMs: () => clock.nowMs(), offsetMinutes: () => clock.offsetMinutes() }
  return readMoment({ moment: text('moment'), reason: text('reason') }, record, world)
}

/** Texts as they were kept; anything else is nothing. */
function textsIn(kept: string | null): Texts {
  if (kept === null) return {}
  try {
    const read: unknown = JSON.parse(kept)
    if (typeof read !== 'object' || read === null) return {}
    return Object.fromEntries(
      Object.entries(read).filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
    )
  } catch {
    return {}
  }
}
