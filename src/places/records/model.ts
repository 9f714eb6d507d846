import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { oneAtATime } from '../../app/one-at-a-time'
import type { BatchSummary } from '../../batch/summary'
import { finder, type Sieve } from './find'

export interface RecordsModel {
  readonly search: ReadonlySignal<string>
  readonly setSearch: (text: string) => void
  readonly sieve: ReadonlySignal<Sieve>
  readonly setSieve: (sieve: Sieve) => void
  readonly inHand: ReadonlySignal<readonly BatchSummary[]>
  /** Newest first: what is wanted, no more of it than is shown. */
  readonly finished: ReadonlySignal<readonly BatchSummary[]>
  readonly more: ReadonlySignal<boolean>
  readonly reading: ReadonlySignal<boolean>
  readonly readMore: () => Promise<void>
  /** Reads as many rows as stand there, or the first page: for what was closed or brought in meanwhile. */
  readonly readAgain: () => void
}

/** Rows read at a time, and shown at a time: thousands of them would be as slow to draw as they are quick to read. */
export const pageSize = 50

/** More than anybody has; the database takes no endless number. */
const allOfThem = 1_000_000

/** Reads heads, never logs: the list is as quick with five thousand batches as with five. */
export function createRecordsModel(app: App): RecordsModel {
  const search = signal('')
  const sieve = signal<Sieve>('all')
  const rows = signal<readonly BatchSummary[]>([])
  const isWhole = signal(false)
  const shown = signal(0)
  const reading = signal(false)
  const isWanted = computed(() => finder(app.catalogue))
  const sifted = (batches: readonly BatchSummary[]): readonly BatchSummary[] => {
    const wanted = { words: search.value, sieve: sieve.value }
    return batches.filter((summary) => isWanted.value(summary, wanted))
  }
  const matching = computed(() => {
    const open = new Set(app.batches.inHand.value.map(({ id }) => id))
    return sifted(rows.value.filter(({ id }) => !open.has(id)))
  })

  let asked = 0
  const read = async (limit: number): Promise<void> => {
    asked += 1
    const mine = asked
    reading.value = true
    const page = await app.batches.finished(limit)
    // What was asked for later holds more, or is newer.
    if (mine !== asked) return
    rows.value = page
    isWhole.value = page.length < limit
    reading.value = false
  }

  const readPage = async (): Promise<void> => {
    asked += 1
    const mine = asked
    reading.value = true
    const last = rows.value.at(-1)
    const before = last === undefined ? undefined : new Date(last.touchedAtMs).toISOString()
    const page = await app.batches.finished(pageSize, before)
    if (mine !== asked) return
    const known = new Set(rows.value.map(({ id }) => id))
    rows.value = [...rows.value, ...page.filter(({ id }) => !known.has(id))]
    isWhole.value = page.length < pageSize
    reading.value = false
  }

  const looksFor = (): boolean => search.peek() !== '' || sieve.peek() !== 'all'
  const readAgain = oneAtATime(() => read(looksFor() ? allOfThem : Math.max(pageSize, rows.peek().length)))
  /** What is looked for may stand far back. */
  const readAll = oneAtATime(() => read(allOfThem))

  const look = (): void => {
    shown.value = pageSize
    if (looksFor() && !isWhole.value) readAll()
  }

  return {
    search,
    setSearch: (text) => {
      search.value = text
      look()
    },
    sieve,
    setSieve: (next) => {
      sieve.value = next
      look()
    },
    inHand: computed(() => sifted(app.batches.inHand.value)),
    finished: computed(() => matching.value.slice(0, shown.value)),
    more: computed(() => !isWhole.value || matching.value.length > shown.value),
    reading,
    readMore: async () => {
      if (reading.value) return
      shown.value += pageSize
      if (!isWhole.value && matching.value.length < shown.value) await readPage()
    },
    readAgain: () => {
      shown.value = Math.max(shown.value, pageSize)
      readAgain()
    },
  }
}
