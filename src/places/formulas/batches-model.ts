import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { App } from '../../app/app'
import { figuresOf } from '../../batch/batch-figures'
import {
  type ComparedBatch,
  type ComparedRow,
  compareBatches,
  type GoesWith,
  goesWith,
} from '../../batch/compare-batches'
import { foldBatch } from '../../batch/fold'
import type { BatchSummary } from '../../batch/summary'

/** So many stand side by side at the most. */
export const mostBatches = 12
/** So many finished batches of all formulas are looked through, by their summaries alone. */
const lookedThrough = 1000
const pageSize = 200

export interface BatchesModel {
  /** Finished batches of the formula, the newest first. */
  readonly known: ReadonlySignal<readonly BatchSummary[]>
  /** There may be older ones that were not looked for. */
  readonly isCut: ReadonlySignal<boolean>
  readonly chosen: ReadonlySignal<ReadonlySet<string>>
  readonly toggle: (batch: string) => void
  /** Those chosen whose logs are read, the oldest first. */
  readonly compared: ReadonlySignal<readonly ComparedBatch[]>
  /** Codes of those whose logs cannot be read. */
  readonly unreadable: ReadonlySignal<readonly string[]>
  readonly rows: ReadonlySignal<readonly ComparedRow[]>
  /** What the chart shows, and what the other differences are held against. */
  readonly about: ReadonlySignal<ComparedRow | undefined>
  readonly ask: (row: string) => void
  readonly answers: ReadonlySignal<readonly GoesWith[]>
  readonly state: ReadonlySignal<'reading' | 'here'>
  readonly load: () => Promise<void>
}

/** Batches of one formula side by side: summaries of all, logs of the chosen ones alone. `with` is chosen in any case. */
export function createBatchesModel(app: Pick<App, 'batches' | 'log'>, formula: string, asked?: string): BatchesModel {
  const known = signal<readonly BatchSummary[]>([])
  const isCut = signal(false)
  const chosen = signal<ReadonlySet<string>>(new Set())
  const read = signal<ReadonlyMap<string, ComparedBatch | null>>(new Map())
  const wanted = signal<string | null>(null)
  const state = signal<'reading' | 'here'>('reading')

  const readLogs = async (): Promise<void> => {
    const missing = [...chosen.peek()].filter((id) => !read.peek().has(id))
    for (const id of missing) {
      const batch = await comparedOf(app.log, id)
      read.value = new Map(read.peek()).set(id, batch)
    }
  }
  const ofChosen = computed(() => known.value.filter(({ id }) => chosen.value.has(id)))
  const compared = computed(() =>
    ofChosen.value.flatMap(({ id }) => read.value.get(id) ?? []).toSorted((a, b) => a.openedAtMs - b.openedAtMs),
  )
  const rows = computed(() => compareBatches(compared.value))
  const about = computed(() => rows.value.find(({ id }) => id === wanted.value) ?? firstAsked(rows.value))
  return {
    known,
    isCut,
    chosen,
    compared,
    rows,
    about,
    state,
    unreadable: computed(() => ofChosen.value.filter(({ id }) => read.value.get(id) === null).map(({ code }) => code)),
    answers: computed(() => (about.value === undefined ? [] : goesWith(rows.value, about.value.id))),
    ask: (row) => {
      wanted.value = row
    },
    toggle: (batch) => {
      const next = new Set(chosen.peek())
      if (!next.delete(batch) && next.size < mostBatches) next.add(batch)
      chosen.value = next
      void readLogs()
    },
    load: async () => {
      const found = await finishedOf(app.batches, formula)
      known.value = found.batches
      isCut.value = found.isCut
      const newest = found.batches.map(({ id }) => id)
      const first = asked !== undefined && newest.includes(asked) ? [asked] : []
      chosen.value = new Set([...first, ...newest].slice(0, mostBatches))
      await readLogs()
      state.value = 'here'
    },
  }
}

/** What a thin batch is asked about first: a viscosity, else any check. */
function firstAsked(rows: readonly ComparedRow[]): ComparedRow | undefined {
  const checks = rows.filter(({ kind }) => kind === 'check')
  return checks.find(({ label }) => /viscos/i.test(label)) ?? checks[0] ?? rows[0]
}

async function finishedOf(
  batches: App['batches'],
  formula: string,
): Promise<{ batches: readonly BatchSummary[]; isCut: boolean }> {
  const all = new Map<string, BatchSummary>()
  let before: string | undefined
  for (;;) {
    const page = await batches.finished(pageSize, before)
    const had = all.size
    for (const summary of page) all.set(summary.id, summary)
    const last = page.at(-1)
    const isLast = page.length < pageSize || all.size === had || last === undefined
    if (isLast || all.size >= lookedThrough)
      return {
        batches: [...all.values()]
          .filter(({ formulaId, stage }) => formulaId === formula && stage === 'closed')
          .sort((a, b) => b.openedAtMs - a.openedAtMs),
        isCut: !isLast,
      }
    before = new Date(last.touchedAtMs).toISOString()
  }
}

/** Null where the log is not here or cannot be folded: such a batch is named and left out. */
async function comparedOf(log: App['log'], id: string): Promise<ComparedBatch | null> {
  try {
    const state = foldBatch(await log.read(`batch:${id}`))
    const { code, revision } = state.header
    return { id, code, revision: revision.number, openedAtMs: state.openedAtMs, figures: figuresOf(state) }
  } catch {
    return null
  }
}
