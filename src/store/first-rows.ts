import type { Database } from './database'
import type { HeadRow } from './schema'

/** As many rows as a page can read beside its first screen; most tablets have no more. */
export const firstRun = 200

export const firstRows = (db: Database): Promise<readonly HeadRow[]> => db.getAll('heads', null, firstRun)
