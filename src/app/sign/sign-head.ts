import { type DeviceSigned, keyIdOf, signedText } from '../../batch/device-signature'
import { type KeyBodies, type KeyDraft, keyStream } from '../../batch/key-trail'
import type { DeviceKeys } from '../../ports/device-keys'
import { appendTo } from '../append-to'
import type { HandleWorld } from '../live-batch'
import { projectStream } from '../project'
import { journalledKeys } from './journalled-keys'

export type SigningWorld = Pick<HandleWorld, 'log' | 'writer' | 'deviceKeys'>

interface End {
  readonly stream: string
  /** The hash of the last entry. */
  readonly head: string
  /** Who is at the tablet. */
  readonly by: string
}

/**
 * The tablet's own signature under the end of a log; null where there is none to be had, which keeps nothing from being
 * closed. A first key, and one in the place of a key that is gone, is journalled before anything is signed with it.
 */
export async function signEnd(world: SigningWorld, end: End): Promise<DeviceSigned | null> {
  if (world.deviceKeys === undefined) return null
  try {
    const keys = await world.deviceKeys()
    return await keys.inTurn(() => signWith(keys, world, end))
  } catch {
    // No secure context, no arithmetic, no database: the record says that nothing was signed.
    return null
  }
}

async function signWith(
  keys: DeviceKeys,
  world: SigningWorld,
  { stream, head, by }: End,
): Promise<DeviceSigned | null> {
  const text = signedText(stream, head)
  const before = await keys.kept()
  const already = before === null ? null : await keys.sign(text).catch(() => null)
  const publicKey = before !== null && already !== null ? before : await keys.make()
  const signature = already ?? (await keys.sign(text))
  const key = keyIdOf(publicKey)
  if (key === null) return null
  const why = before === null || already !== null ? 'missing' : 'unusable'
  const isTold = await journal(world, by, { key, publicKey, why })
  return isTold ? { head, key, publicKey, signature } : null
}

/** True once the log has the key, and that those before it are gone. */
async function journal(
  { log, writer }: SigningWorld,
  by: string,
  { key, publicKey, why }: { readonly key: string; readonly publicKey: string } & Pick<KeyBodies['key-lost'], 'why'>,
): Promise<boolean> {
  if ((await log.head(keyStream(key))) !== null) return true
  const write = (stream: string, draft: KeyDraft) =>
    appendTo({ log, writer, by: () => by }, stream, draft, (events) => projectStream(stream, events))
  const before = (await journalledKeys(log)).filter(({ lost }) => lost === undefined)
  for (const each of before)
    if ((await write(keyStream(each.key), { kind: 'key-lost', body: { why, instead: key } })) !== null) return false
  return (await write(keyStream(key), { kind: 'key-made', body: { publicKey } })) === null
}
