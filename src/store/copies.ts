import type { Event } from '../batch/event'
import type { KeyShelf } from '../ports/device-keys'
import type { AppendAnswer, AppendRequest } from '../ports/event-log'
import type { Connection } from './connection'
import { keyShelfOf } from './key-shelf'
import { type SecondCopy, type SecondCopyHooks, secondCopy } from './second-copy'
import type { StoreParts } from './store-parts'
import { type Watch, type WatchHooks, watchCopies } from './watch-copies'
import { type WriteDrafts, writeDraftsTo } from './write-drafts'
import { writerOf } from './writer'

/** Everything about there being two copies: what is read for the first screen does without it. */
export interface Copies {
  readonly watch: Watch
  readonly second: SecondCopy
  readonly writeDrafts: WriteDrafts
  readonly keyShelf: KeyShelf
  readonly append: (request: AppendRequest) => Promise<AppendAnswer>
  /** A stream's entries in the journal, for where the database does not answer. */
  readonly readJournal: (stream: string) => Promise<readonly Event[]>
}

interface CopiesHooks extends WatchHooks, Pick<SecondCopyHooks, 'onEntryState'> {
  readonly connection: () => Connection
  readonly onDurable: (events: readonly Event[]) => void
}

export async function openCopies(parts: StoreParts, hooks: CopiesHooks): Promise<Copies> {
  const journal = await parts.journal
  const watch = watchCopies({ ...parts, journal }, hooks)
  const connection = hooks.connection()
  const second = secondCopy(journal, {
    onEntryState: hooks.onEntryState,
    onRestarted: async () => {
      if (parts.state.get().compared) return
      await watch.compare(await connection.get())
    },
  })
  const { databaseWhole } = watch
  return {
    watch,
    second,
    writeDrafts: writeDraftsTo(connection),
    keyShelf: keyShelfOf(connection, parts.locks),
    append: writerOf({
      connection,
      journal,
      second,
      databaseWhole,
      onDurable: hooks.onDurable,
      patienceMs: parts.patienceMs,
    }),
    readJournal: async (stream) => {
      const [events] = await journal.read([stream]).catch(() => [])
      return events ?? []
    },
  }
}
