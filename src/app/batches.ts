import { signal } from '@preact/signals'
import { type BatchSummary, isInHand } from '../batch/summary'
import type { StreamHead } from '../ports/event-log'
import type { Batches } from './app'
import { openHandle } from './batch-handle'
import type { HandleWorld, KeptHandle } from './live-batch'
import { loadAfterFirst } from './load-after-first'
import { loadWriting } from './load-writing'
import { oneAtATime } from './one-at-a-time'

export type BatchesWorld = Omit<HandleWorld, 'onChange'>

export interface KeptBatches extends Batches {
  /** Reads which batches are in hand: one small query, before the first screen. */
  readonly load: () => Promise<void>
  /** Decides what was held while the database was dead. */
  readonly decideHeld: () => Promise<void>
  /** Handles that are open on this page. */
  readonly openOnes: () => readonly KeptHandle[]
}

/** Keeps the batches of this page in step with the log and with what other pages write. */
export function createBatches(world: BatchesWorld): KeptBatches {
  const { log, writer } = world
  const inHand = signal<readonly BatchSummary[]>([])
  const handles = new Map<string, Promise<KeptHandle | null>>()
  const opened: KeptHandle[] = []

  const show = (summary: BatchSummary): void => {
    const others = inHand.value.filter((each) => each.id !== summary.id)
    inHand.value = isInHand(summary) ? byLastTouched([summary, ...others]) : others
  }

  const load = async (): Promise<void> => {
    inHand.value = summariesOf(await log.heads({ family: 'batch', shelf: 'in-hand' }))
  }

  const loadSoon = oneAtATime(load)

  const openOnce = async (id: string): Promise<KeptHandle | null> => {
    const events = await log.read(`batch:${id}`)
    if (events.length === 0) return null
    try {
      const handle = openHandle({ ...world, onChange: show }, id, events)
      opened.push(handle)
      return handle
    } catch {
      // A log that cannot be folded was not written by this app as it stands: it is kept, and listed as damaged.
      return null
    }
  }

  const open = (id: string): Promise<KeptHandle | null> => {
    const known = handles.get(id)
    if (known) return known
    const opening = openOnce(id)
    handles.set(id, opening)
    void opening.then((handle) => handle ?? handles.delete(id))
    return opening
  }

  log.onAppended((events) => {
    const streams = new Set(events.map((event) => event.stream).filter((stream) => stream.startsWith('batch:')))
    for (const stream of streams) {
      const handle = handles.get(stream.slice('batch:'.length))
      // What a handle wrote it knows already; another page, or a file that was brought in, may bring anything.
      if (!handle) loadSoon()
      else void handle.then((live) => live?.take(events.filter((event) => event.stream === stream)))
    }
  })
  log.onEntryState((ids, state) => {
    for (const handle of opened) {
      const own = ids.filter((id) => handle.entryStates.peek().has(id))
      if (own.length > 0) handle.noteStates(own, state)
    }
  })

  return {
    inHand,
    load,
    open,
    openOnes: () => opened,
    finished: async (limit, before) => {
      const { finishedHeads } = await loadAfterFirst()
      return summariesOf(await finishedHeads(log, limit, before))
    },
    start: async (intention, more) => {
      const { startBatch } = await loadWriting()
      const started = await startBatch({ log, writer }, intention)
      if ('refusal' in started) return started
      show(started.summary)
      const handle = await open(started.summary.id)
      for (const next of more) await handle?.intend(next)
      return { id: started.summary.id }
    },
    decideHeld: async () => (await loadAfterFirst()).decideHeld(log, open),
  }
}

const summariesOf = (heads: readonly StreamHead[]): readonly BatchSummary[] =>
  // Rows of this family are written by projectBatch alone; a damaged one has no summary.
  heads.flatMap((head) => (head.summary === null ? [] : [head.summary as BatchSummary]))

const byLastTouched = (summaries: readonly BatchSummary[]): readonly BatchSummary[] =>
  [...summaries].sort((a, b) => b.touchedAtMs - a.touchedAtMs)
