import type { IDBPDatabase } from 'idb'
import type { Schema } from './schema'

type Reads = Pick<IDBPDatabase<Schema>, 'get' | 'getAll' | 'getAllKeys' | 'getAllFromIndex' | 'close'>

/** The database as far as reading goes: all that the first screen needs of it. Writing wraps it (whole-database.ts). */
export interface Database extends Reads {
  readonly raw: IDBDatabase
}

export interface DatabaseHooks {
  readonly upgrade: (db: IDBDatabase, oldVersion: number, tx: IDBTransaction) => void
  readonly blocked: () => void
  /** Another page wants this version, or the database deleted (null). */
  readonly blocking: (wanted: number | null) => void
  readonly terminated: () => void
}

export async function openDatabase(name: string, version: number, hooks: DatabaseHooks): Promise<Database> {
  const request = indexedDB.open(name, version)
  request.onupgradeneeded = ({ oldVersion }) => {
    if (request.transaction) hooks.upgrade(request.result, oldVersion, request.transaction)
  }
  request.onblocked = hooks.blocked
  const raw = await answerOf(request)
  raw.onversionchange = ({ newVersion }) => hooks.blocking(newVersion)
  raw.onclose = hooks.terminated
  return over(raw)
}

function over(raw: IDBDatabase): Database {
  const storeOf = (name: string) => raw.transaction(name).objectStore(name)
  const reads = {
    get: async (name: string, key: IDBValidKey) => answerOf(storeOf(name).get(key)),
    getAll: async (name: string, range?: IDBKeyRange | null, count?: number) =>
      answerOf(storeOf(name).getAll(range, count)),
    getAllKeys: async (name: string, range?: IDBKeyRange | null) => answerOf(storeOf(name).getAllKeys(range)),
    getAllFromIndex: async (name: string, index: string, range: IDBKeyRange, count?: number) =>
      answerOf(storeOf(name).index(index).getAll(range, count)),
    close: () => raw.close(),
  }
  // The names of stores decide what is in them, which these functions cannot know and the schema does.
  return { ...(reads as unknown as Reads), raw }
}

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
