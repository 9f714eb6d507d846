import type { Event } from '../batch/event'
import { tipOf } from '../batch/tip'
import type { EventLog, HealReport } from '../ports/event-log'
import { areEqual } from './compare-copies'
import type { Database } from './database'
import { pageLock } from './locks'
import type { HeadRow } from './schema'
import type { RestartableJournal } from './second-copy'
import type { StoreParts } from './store-parts'
import { sumsOf } from './sums-of'

/** The comparing of the two copies, once for each connection. */
export interface Watch {
  /** Compares, beginning with the rows that were read already, and heals; never rejects. */
  compare(db: Database, rows?: Promise<readonly HeadRow[]>): Promise<void>
  /** Resolves when the database holds all that the journal has, or when nothing can be said about that. */
  databaseWhole(): Promise<void>
  ready(): Promise<void>
  /** There is nothing to compare: nobody is to wait. */
  giveUp(): void
}

export interface WatchHooks {
  readonly log: () => EventLog
  readonly onRestored: (events: readonly Event[]) => void
  readonly onReport: (report: HealReport) => void
}

const storageStream = 'settings:storage'

type WatchParts = Omit<StoreParts, 'journal'> & { readonly journal: RestartableJournal }

export function watchCopies(parts: WatchParts, hooks: WatchHooks): Watch {
  const { journal, locks, state } = parts
  const first = gate()
  let whole = gate()

  async function compare(db: Database, rows?: Promise<readonly HeadRow[]>): Promise<void> {
    whole = gate()
    const mine = whole
    try {
      for (const one of await attempt(db, rows, mine.open)) {
        hooks.onReport(one)
        if (one.code.startsWith('HEALED')) void record(one)
      }
    } catch {
      // What failed says so itself: the connection or the journal is dead, and its return brings us here again.
    } finally {
      mine.open()
      first.open()
    }
  }

  async function attempt(
    db: Database,
    rows: Promise<readonly HeadRow[]> | undefined,
    onDatabaseWhole: () => void,
  ): Promise<readonly HealReport[]> {
    if (journal.state() !== 'open' && !(await journal.start()))
      return [{ code: 'ONE_COPY_ONLY', entries: 0, streams: 0 }]
    // The two are not read at one moment: where another page wrote in between they differ, and are compared again.
    const [inDatabase, table] = await Promise.all([sumsOf(db, rows), journal.table()])
    const reports = areEqual(inDatabase, table)
      ? []
      : await locks.exclusive('journal:compare', () => heal(db, onDatabaseWhole))
    state.set({ compared: true })
    return reports
  }

  async function heal(db: Database, onDatabaseWhole: () => void): Promise<readonly HealReport[]> {
    const { healCopies } = await import('./heal')
    const own = pageLock(parts.pageId)
    const others = [...(await locks.held())].filter((name) => name.startsWith(pageLock('')) && name !== own)
    const { onRestored } = hooks
    return healCopies({
      db,
      journal,
      loadProject: parts.loadProject,
      onRestored,
      onDatabaseWhole,
      hasCompany: others.length > 0,
    })
  }

  async function record(report: HealReport): Promise<void> {
    const [{ seal }, project] = await Promise.all([import('../batch/seal'), parts.loadProject()])
    const log = hooks.log()
    const before = await log.read(storageStream)
    const place = { stream: storageStream, replica: log.replica, id: parts.newId(), at: await parts.now(), by: '' }
    const event = seal({ kind: 'healed', body: { ...report } }, tipOf(before, log.replica), place)
    const projection = () => project(storageStream, [...before, event])
    const answer = await log.append({ events: [event], after: before.at(-1)?.hash ?? null, projection })
    if (answer.state === 'conflict') await record(report)
  }

  return { compare, databaseWhole: () => whole.passed, ready: () => first.passed, giveUp: first.open }
}

/** A promise that is fulfilled from outside, once. */
function gate(): { readonly passed: Promise<void>; readonly open: () => void } {
  let open = () => {}
  const passed = new Promise<void>((resolve) => {
    open = resolve
  })
  return { passed, open: () => open() }
}
