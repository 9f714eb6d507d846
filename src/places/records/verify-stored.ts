import type { App } from '../../app/app'
import { type DeviceVerdict, verdictsOf } from '../../app/sign/device-verdict'
import { deviceRecord } from '../../batch/record-device'
import { type Verification, verifyTrail } from '../../batch/verify-trail'

/** A record as it stands in storage now, in both copies. */
export interface StoredTrail {
  readonly database: Verification
  /** Entries that the list of batches knows of and that are not there any more. */
  readonly gone: number
  /** Null where the second copy does not answer. */
  readonly copy: Verification | null
  /** Of each signature of a tablet. */
  readonly device: readonly DeviceVerdict[]
}

/** Reads both copies anew and checks every hash; each tells what was changed in the other. */
export async function verifyStored(
  app: Pick<App, 'log' | 'archive' | 'deviceKeys'>,
  stream: string,
): Promise<StoredTrail> {
  const archive = await app.archive()
  const [events, head, copy] = await Promise.all([
    app.log.read(stream),
    app.log.head(stream),
    archive.secondCopy(stream),
  ])
  return {
    database: verifyTrail(events, copy ?? []),
    gone: Math.max(0, (head?.count ?? 0) - events.length),
    copy: copy === null || copy.length === 0 ? null : verifyTrail(copy, events),
    device: [...(await verdictsOf(app, deviceRecord(events).rows)).values()],
  }
}

/** What a verification says of one copy. */
export function verifiedWords(found: Verification): string {
  if (found.intact) return `intact: ${found.entries} entries, head ${(found.head ?? 'none').slice(0, 12)}`
  const { brokenAt, kind, why, field } = found
  if (why === 'MISSING_BEFORE') return `an entry before entry ${brokenAt} (${kind}) is missing`
  return `entry ${brokenAt} (${kind}) was changed after it was written${field === undefined ? '' : `, in ${field}`}`
}
