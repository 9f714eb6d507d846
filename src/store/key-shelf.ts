import type { KeyShelf } from '../ports/device-keys'
import type { Connection } from './connection'
import type { Locks } from './locks'
import { whole } from './whole-database'

const place = 'device-key'

/** Beside the name of this installation: what stands there goes into no journal, file or backup. */
export const keyShelfOf = (connection: Connection, locks: Locks): KeyShelf => ({
  read: async () => {
    const kept = await connection.run((db) => db.get('meta', place))
    return typeof kept === 'object' ? kept : null
  },
  keep: async (key) => {
    await connection.run((db) => whole(db).put('meta', key, place))
  },
  inTurn: (task) => locks.exclusive(place, task),
})
