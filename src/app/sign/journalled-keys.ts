import { keyIdOf } from '../../batch/device-signature'
import { type JournalledKey, keyIn } from '../../batch/key-trail'
import type { DeviceKeys } from '../../ports/device-keys'
import type { EventLog } from '../../ports/event-log'

/** Keys that this tablet's log knows of, the one written about last first. */
export async function journalledKeys(log: Pick<EventLog, 'heads' | 'read'>): Promise<readonly JournalledKey[]> {
  const heads = await log.heads({ family: 'device' })
  const keys = await Promise.all(heads.map(async ({ stream }) => keyIn(stream, await log.read(stream))))
  return keys.flatMap((key) => key ?? [])
}

/** The key that is kept here; null where there is none, or the database does not answer. */
export async function ownKey(keys: DeviceKeys): Promise<string | null> {
  const publicKey = await keys.kept().catch(() => null)
  return publicKey === null ? null : keyIdOf(publicKey)
}
