import { type IDBPDatabase, wrap } from 'idb'
import type { Database } from './database'
import type { Schema } from './schema'

/** The same database, to write in. */
export const whole = ({ raw }: Database): IDBPDatabase<Schema> =>
  // `wrap` cannot know what is in it; `migrate` made it so.
  wrap(raw) as unknown as IDBPDatabase<Schema>
