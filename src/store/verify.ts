import type { Connection } from './connection'
import type { Journal } from './journal-port'
import { ofStream } from './of-stream'
import { pause } from './pause'
import { whole } from './whole-database'

const restMs = 50

/**
 * Checks the hash of every entry of both copies, stream by stream, in the journal's worker and with rests between;
 * goes on where the last page stopped, once round.
 */
export async function verifyAll(
  connection: Connection,
  journal: Journal,
  onDamaged: (ids: readonly string[]) => void,
): Promise<void> {
  const start = (await connection.run((db) => db.get('meta', 'verified-to'))) ?? ''
  const halves = [IDBKeyRange.lowerBound(start, true), IDBKeyRange.upperBound(start)]
  for (const half of halves) {
    const streams = await connection.run((db) => db.getAllKeys('heads', half))
    for (const stream of streams) {
      const [copy] = await journal.read([stream])
      const events = await connection.run((db) => db.getAll('events', ofStream(stream)))
      const damaged = new Set([...(await journal.damagedOf(events)), ...(await journal.damagedOf(copy ?? []))])
      if (damaged.size > 0) onDamaged([...damaged])
      await connection.run((db) => whole(db).put('meta', stream, 'verified-to'))
      await pause(restMs)
    }
  }
}
