import { fingerprintOf, type JournalledKey } from '../../batch/key-trail'
import type { DeviceRow } from '../../batch/record-device'
import { counted } from '../counted'
import type { Format } from '../format'
import type { DeviceVerdict } from './device-verdict'

/** Since when a key is gone. */
export const goneWords = ({ lost }: JournalledKey, format: Format): string =>
  lost === undefined ? '' : `${lost.why} since ${format.date(lost.at)}`

/** That a tablet's signature does not fit, and why. */
export function unfitWords({ signed, covers }: Pick<DeviceRow, 'signed' | 'covers'>): string {
  const why = covers === null ? 'the entry that it signed is not here' : 'what stands here is not what was signed'
  return `The signature of a tablet with key ${fingerprintOf(signed.key)} does not fit: ${why}.`
}

/** What is to be said of tablets' signatures; null where nothing is. */
export function signedWords(verdicts: readonly DeviceVerdict[]): string | null {
  const unfit = verdicts.filter(({ fits }) => fits === false).length
  const untold = verdicts.filter(({ fits }) => fits === null).length
  if (unfit > 0) return `${counted(unfit, 'signature of a tablet does', 'signatures of tablets do')} not fit.`
  if (untold > 0) return 'This browser cannot check the signature of a tablet here: it needs a secure address (https).'
  return verdicts.length === 0
    ? null
    : `${counted(verdicts.length, 'signature of a tablet fits', 'signatures of tablets fit')}.`
}
