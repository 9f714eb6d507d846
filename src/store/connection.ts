import type { StorageState } from '../ports/event-log'
import { type Database, openDatabase } from './database'
import { isDead, isFull, NoDatabase, withPatience } from './faults'
import { databaseName, databaseVersion, migrate } from './schema'

export type DatabaseState = StorageState['database']

export interface ConnectionOptions {
  readonly newReplica: () => string
  readonly onState: (state: DatabaseState) => void
  /**
   * Runs on every new connection. All but the first are usable only when it is done: the database may have been lost
   * together with the connection, and be a new, empty one. The first is read at once, so as not to delay the screen.
   */
  readonly onConnection: (db: Database) => Promise<void>
  readonly patienceMs: number
}

export interface Connection {
  /** The database, opened again where the connection died. Rejects with NoDatabase or NoAnswer. */
  get(): Promise<Database>
  /** Runs `work`, once more on a new connection where the first one turns out dead: `work` must be idempotent. */
  run<T>(work: (db: Database) => Promise<T>): Promise<T>
  state(): DatabaseState
  /** True where this page's first connection had to make the database. */
  wasFresh(): boolean
}

interface Attempt {
  readonly opened: Promise<Database>
  readonly usable: Promise<Database>
}

/** The one connection of this page. A dead one is dropped and opened again; a newer database is left alone. */
export function connect(options: ConnectionOptions): Connection {
  let current: Attempt | null = null
  let state: DatabaseState = 'dead'
  let connections = 0
  let isFirstFresh = false

  function become(next: DatabaseState): void {
    if (state === next) return
    state = next
    options.onState(next)
  }

  function attempt(): Attempt {
    const opened = open(() => {
      if (current === self) current = null
    })
    const usable = opened.then(async (db) => {
      connections += 1
      const readied = options.onConnection(db)
      if (connections > 1) await readied
      become('open')
      return db
    })
    const self: Attempt = { opened, usable }
    usable.catch((error: unknown) => {
      if (current === self) current = null
      become(
        error instanceof DOMException && error.name === 'VersionError'
          ? 'newer'
          : connections === 0
            ? 'refused'
            : 'dead',
      )
    })
    return self
  }

  async function open(forget: () => void): Promise<Database> {
    let mine: Database | null = null
    const leave = (next: DatabaseState) => {
      mine?.close()
      forget()
      become(next)
    }
    if (typeof indexedDB === 'undefined') throw new NoDatabase()
    mine = await openDatabase(databaseName, databaseVersion, {
      upgrade(db, oldVersion, tx) {
        if (connections === 0) isFirstFresh = oldVersion === 0
        migrate(db, oldVersion, tx, options.newReplica)
      },
      blocked: () => become('blocked'),
      // Another page wants a newer schema, or the database deleted. Closing lets what runs finish first.
      blocking: (wanted) => leave(wanted === null ? 'dead' : 'newer'),
      terminated: () => leave('dead'),
    })
    return mine
  }

  async function get(): Promise<Database> {
    current ??= attempt()
    const { opened, usable } = current
    try {
      await withPatience(opened, options.patienceMs)
    } catch (error) {
      if (state === 'open') become('dead')
      throw isDead(error) ? error : new NoDatabase('', { cause: error })
    }
    return usable
  }

  async function run<T>(work: (db: Database) => Promise<T>): Promise<T> {
    const attempted = await get()
    try {
      return await work(attempted)
    } catch (error) {
      if (!isDead(error) || isFull(error)) throw error
      attempted.close()
      current = null
      become('dead')
      return work(await get())
    }
  }

  return { get, run, state: () => state, wasFresh: () => isFirstFresh }
}
