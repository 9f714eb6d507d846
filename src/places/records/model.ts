import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { oneAtATime } from '../../app/one-at-a-time'
import type { BatchSummary } from '../../batch/summary'

export interface RecordsModel {
  readonly search: ReadonlySignal<string>
  readonly setSearch: (text: string) => void
  readonly inHand: ReadonlySignal<readonly BatchSummary[]>
  /** Newest first, as far as they have been read. */
  readonly finished: ReadonlySignal<readonly BatchSummary[]>
  readonly more: ReadonlySignal<boolean>
  readonly reading: ReadonlySignal<boolean>
  readonly readMore: () => Promise<void>
  /** Reads as many rows as stand there, or the first page: for what was closed or brought in meanwhile. */
  readonly readAgain: () => void
}

/** Rows read at a time. */
export const pageSize = 50

/** Reads heads, never logs: the list is as quick with five thousand batches as with five. */
export function createRecordsModel(app: App): RecordsModel {
  const search = signal('')
  const rows = signal<readonly BatchSummary[]>([])
  const more = signal(true)
  const reading = signal(false)
  const matches = (summary: BatchSummary): boolean => isFound(summary, search.value)

  const readPage = async (): Promise<void> => {
    const last = rows.value.at(-1)
    const before = last === undefined ? undefined : new Date(last.touchedAtMs).toISOString()
    const page = await app.batches.finished(pageSize, before)
    const known = new Set(rows.value.map(({ id }) => id))
    rows.value = [...rows.value, ...page.filter(({ id }) => !known.has(id))]
    more.value = page.length === pageSize
  }

  /** What is looked for may stand far back: the search reads on until it has found a page of rows. */
  const readMore = async (): Promise<void> => {
    if (reading.value) return
    reading.value = true
    const had = rows.value.filter(matches).length
    do await readPage()
    while (more.value && search.value !== '' && rows.value.filter(matches).length - had < pageSize)
    reading.value = false
  }

  const readAgain = oneAtATime(async (): Promise<void> => {
    reading.value = true
    const limit = Math.max(pageSize, rows.value.length)
    const page = await app.batches.finished(limit)
    rows.value = page
    more.value = page.length === limit
    reading.value = false
  })

  return {
    search,
    setSearch: (text) => {
      search.value = text
      if (text !== '' && more.value && rows.value.filter(matches).length < pageSize) void readMore()
    },
    inHand: computed(() => app.batches.inHand.value.filter(matches)),
    finished: computed(() => {
      const open = new Set(app.batches.inHand.value.map(({ id }) => id))
      return rows.value.filter((summary) => !open.has(summary.id) && matches(summary))
    }),
    more,
    reading,
    readMore,
    readAgain,
  }
}

/** Every word that was typed stands somewhere in the code, the short name, the formula or the decision. */
export function isFound(summary: BatchSummary, search: string): boolean {
  const { code, shortName, formulaName, decision = '' } = summary
  const text = `${code} ${shortName} ${formulaName} r${summary.revision} ${decision}`.toLowerCase()
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word))
}
