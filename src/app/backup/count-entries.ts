import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { EventLog, Family } from '../../ports/event-log'
import type { App } from '../app'

/** All but settings: saving a backup is noted in them, and would make one entry new at once. */
const counted: readonly Family[] = ['batch', 'formula', 'material', 'lot', 'person', 'balance', 'vessel', 'template']

/** How many entries there are, from the rows of lists alone. */
export async function countEntries(log: EventLog): Promise<number> {
  const rows = await Promise.all(counted.map((family) => log.heads({ family })))
  return rows.flat().reduce((sum, { count }) => sum + count, 0)
}

export interface EntryCount {
  /** Null until they are counted, and while all there may be to lose is the demonstration. */
  readonly entries: ReadonlySignal<number | null>
  readonly dispose: () => void
}

type World = Pick<App, 'log' | 'hasDemonstration' | 'settings'>

/** Counts once, then keeps in step with what is written. */
export function followEntries({ log, hasDemonstration, settings }: World): EntryCount {
  const known = signal<number | null>(null)
  let since = 0
  const dispose = log.onAppended((events) => {
    const more = events.filter(({ stream }) => counted.some((family) => stream.startsWith(`${family}:`))).length
    since += more
    if (known.value !== null) known.value += more
  })
  void countEntries(log).then((count) => {
    // What was written while the rows were read may stand in them or not: a reminder need not know to the entry.
    known.value = count + since
  })
  const isOnlyShown = computed(() => hasDemonstration.value && settings.value.value.lastBackupAt === undefined)
  return { entries: computed(() => (isOnlyShown.value ? null : known.value)), dispose }
}
