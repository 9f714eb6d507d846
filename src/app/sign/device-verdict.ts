import { keyIdOf, signedText } from '../../batch/device-signature'
import type { JournalledKey } from '../../batch/key-trail'
import type { DeviceRow } from '../../batch/record-device'
import type { DeviceKeys } from '../../ports/device-keys'
import type { App } from '../app'
import { journalledKeys, ownKey } from './journalled-keys'

/** What a tablet's signature is worth here. */
export interface DeviceVerdict {
  /** Whether it is of this key, and of an end that this record has; null where this browser cannot tell. */
  readonly fits: boolean | null
  /** The key signs on this tablet; or its making stands in this tablet's journal; or nothing here knows of it. */
  readonly from: 'here' | 'journal' | 'nowhere'
  readonly journalled: JournalledKey | null
  /** Keys that it came in the place of. */
  readonly insteadOf: readonly JournalledKey[]
}

type Verdicts = ReadonlyMap<string, DeviceVerdict>

/** Every row's verdict, by its entry. */
export async function verdictsOf(
  { log, deviceKeys }: Pick<App, 'log' | 'deviceKeys'>,
  rows: readonly Omit<DeviceRow, 'after'>[],
): Promise<Verdicts> {
  if (rows.length === 0) return new Map()
  const [keys, journalled] = await Promise.all([deviceKeys(), journalledKeys(log)])
  const own = await ownKey(keys)
  const verdicts = rows.map(async (row): Promise<readonly [string, DeviceVerdict]> => {
    const { key } = row.signed
    const known = journalled.find((each) => each.key === key) ?? null
    return [
      row.entry,
      {
        fits: await fits(keys, row),
        from: key === own ? 'here' : known === null ? 'nowhere' : 'journal',
        journalled: known,
        insteadOf: journalled.filter(({ lost }) => lost?.instead === key),
      },
    ]
  })
  return new Map(await Promise.all(verdicts))
}

async function fits(keys: DeviceKeys, { stream, signed, covers }: Omit<DeviceRow, 'after'>): Promise<boolean | null> {
  const { head, key, publicKey, signature } = signed
  if (covers === null || keyIdOf(publicKey) !== key) return false
  return keys.verify(publicKey, signedText(stream, head), signature).catch(() => null)
}
