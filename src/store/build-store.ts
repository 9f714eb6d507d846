import type { Event } from '../batch/event'
import type { Archive } from '../ports/archive'
import type { Drafts, EntryState, EventLog, HealReport } from '../ports/event-log'
import { type Connection, connect } from './connection'
import { databaseLog } from './database-log'
import { databaseDrafts } from './drafts'
import { isStorageFault } from './faults'
import { lazyArchive } from './lazy-archive'
import { listeners } from './listeners'
import { secondCopy } from './second-copy'
import type { StoreParts } from './store-parts'
import { type Watch, watchCopies } from './watch-copies'

export interface Store {
  readonly log: EventLog
  readonly drafts: Drafts
  readonly archive: () => Promise<Archive>
}

export interface BuiltStore extends Store {
  readonly connection: Connection
  readonly watch: Watch
  reportDamaged(ids: readonly string[]): void
  /** Looks whether both copies still answer, and mends what does not. */
  revive(): Promise<void>
}

/** Puts the store together from its parts, and opens it. Resolves as soon as the first screen can be read. */
export async function buildStore(parts: StoreParts): Promise<BuiltStore> {
  const { journal, pages, state, patienceMs } = parts
  const appended = listeners<[readonly Event[], 'this-page' | 'another-page']>()
  const moved = listeners<[readonly string[], EntryState]>()
  const healed = listeners<[HealReport]>()
  const reports: HealReport[] = []
  let replica = parts.newId()

  const report = (one: HealReport) => {
    reports.push(one)
    healed.tell(one)
  }
  const onDurable = (events: readonly Event[]) => {
    appended.tell(events, 'this-page')
    pages.tell({ kind: 'appended', events })
  }
  const watch = watchCopies(parts, {
    log: () => log,
    onRestored: (events) => appended.tell(events, 'another-page'),
    onReport: report,
  })
  const connection = connect({
    newReplica: parts.newId,
    patienceMs,
    onState: (database) => state.set({ database }),
    onConnection: async (db) => {
      const replicaKnown = db.get('meta', 'replica').then((found) => {
        replica = found ?? replica
      })
      await watch.compare(db, replicaKnown)
    },
  })
  const second = secondCopy(journal, {
    onEntryState: moved.tell,
    onRestarted: async () => {
      if (!state.get().compared) await watch.compare(await connection.get())
    },
  })
  pages.onMessage((message) => {
    if (message.kind === 'appended') appended.tell(message.events, 'another-page')
  })

  const log: EventLog = {
    ...databaseLog({ connection, journal, second, databaseWhole: watch.databaseWhole, onDurable, patienceMs }),
    get replica() {
      return replica
    },
    hold: second.hold,
    heldIntentions: second.heldIntentions,
    releaseHeld: second.releaseHeld,
    onAppended: appended.add,
    onEntryState: moved.add,
    onHealed: (listener) => {
      for (const one of reports) listener(one)
      return healed.add(listener)
    },
    onState: state.onChange,
    state: state.get,
    ready: watch.ready,
  }

  await openFirst(connection, watch)
  return {
    log,
    drafts: databaseDrafts(connection, pages),
    archive: () =>
      lazyArchive({
        connection,
        second,
        journal,
        loadProject: parts.loadProject,
        onDurable,
        databaseWhole: watch.databaseWhole,
        newReplica: () => {
          replica = parts.newId()
          return replica
        },
      }),
    connection,
    watch,
    reportDamaged: (ids) => report({ code: 'DAMAGED_ENTRY', entries: ids.length, streams: 1 }),
    revive: async () => {
      await Promise.all([second.revive(), connection.get().catch(() => undefined)])
    },
  }
}

/** A database that had to be made may be one that was lost: then the journal gets a moment to bring it back. */
async function openFirst(connection: Connection, watch: Watch): Promise<void> {
  try {
    await connection.get()
    if (connection.wasFresh()) await Promise.race([watch.ready(), new Promise((done) => setTimeout(done, 3_000))])
  } catch (error) {
    watch.giveUp()
    if (!isStorageFault(error)) throw error
  }
}
