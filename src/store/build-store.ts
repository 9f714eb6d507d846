import type { Event } from '../batch/event'
import type { Archive } from '../ports/archive'
import type { Drafts, EntryState, EventLog, HealReport } from '../ports/event-log'
import { type Connection, connect } from './connection'
import type { Copies } from './copies'
import { databaseLog } from './database-log'
import { databaseDrafts } from './drafts'
import { isStorageFault } from './faults'
import { firstRows } from './first-rows'
import { lazyArchive } from './lazy-archive'
import { listeners } from './listeners'
import { pause } from './pause'
import type { StoreParts } from './store-parts'

export interface Store {
  readonly log: EventLog
  readonly drafts: Drafts
  readonly archive: () => Promise<Archive>
}

export interface BuiltStore extends Store {
  readonly connection: Connection
  readonly copies: Promise<Copies>
  reportDamaged(ids: readonly string[]): void
  /** Looks whether both copies still answer, and mends what does not. */
  revive(): Promise<void>
}

/** Puts the store together from its parts, and opens it. Resolves as soon as the first screen can be read. */
export async function buildStore(parts: StoreParts): Promise<BuiltStore> {
  const { pages, state, patienceMs } = parts
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
  const copies = import('./copies').then(({ openCopies }) =>
    openCopies(parts, {
      log: () => log,
      connection: () => connection,
      onRestored: (events) => appended.tell(events, 'another-page'),
      onReport: report,
      onEntryState: moved.tell,
      onDurable,
    }),
  )
  const connection = connect({
    newReplica: parts.newId,
    patienceMs,
    onState: (database) => state.set({ database }),
    onConnection: async (db) => {
      const replicaKnown = db.get('meta', 'replica').then((found) => {
        if (typeof found === 'string') replica = found
      })
      // Behind what the first screen asks for; before those who compare are there.
      const rows = replicaKnown.then(() => firstRows(db))
      // Told to whoever compares.
      rows.catch(() => undefined)
      await (await copies).watch.compare(db, rows)
    },
  })
  pages.onMessage((message) => {
    if (message.kind === 'appended') appended.tell(message.events, 'another-page')
  })

  const log: EventLog = {
    ...databaseLog(connection, async (stream) => (await copies).readJournal(stream)),
    append: async (request) => (await copies).append(request),
    get replica() {
      return replica
    },
    hold: async (held) => (await copies).second.hold(held),
    heldIntentions: async () => (await copies).second.heldIntentions(),
    releaseHeld: async (id) => (await copies).second.releaseHeld(id),
    onAppended: appended.add,
    onEntryState: moved.add,
    onHealed: (listener) => {
      for (const one of reports) listener(one)
      return healed.add(listener)
    },
    onState: state.onChange,
    state: state.get,
    ready: async () => (await copies).watch.ready(),
  }

  await openFirst(connection, copies)
  return {
    log,
    drafts: databaseDrafts(connection, pages, async (texts) => (await copies).writeDrafts(texts)),
    archive: async () => {
      const { second, watch } = await copies
      return lazyArchive({
        connection,
        second,
        journal: await parts.journal,
        loadProject: parts.loadProject,
        onDurable,
        databaseWhole: watch.databaseWhole,
        newReplica: () => {
          replica = parts.newId()
          return replica
        },
      })
    },
    connection,
    copies,
    reportDamaged: (ids) => report({ code: 'DAMAGED_ENTRY', entries: ids.length, streams: 1 }),
    revive: async () => {
      const { second } = await copies
      await Promise.all([second.revive(), connection.get().catch(() => undefined)])
    },
  }
}

/** A database that had to be made may be one that was lost: then the journal gets a moment to bring it back. */
async function openFirst(connection: Connection, copies: Promise<Copies>): Promise<void> {
  try {
    await connection.get()
    if (connection.wasFresh()) await Promise.race([copies.then(({ watch }) => watch.ready()), pause(3_000)])
  } catch (error) {
    void copies.then(({ watch }) => watch.giveUp())
    if (!isStorageFault(error)) throw error
  }
}
