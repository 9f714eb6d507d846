import type { Format } from '../../app/format'
import type { DeviceVerdict } from '../../app/sign/device-verdict'
import { goneWords, unfitWords } from '../../app/sign/key-words'
import { fingerprintOf } from '../../batch/key-trail'
import type { DeviceRow } from '../../batch/record-device'
import { afterWords } from './after-words'

/** What a tablet's signature says, and whether it does not fit. */
export function deviceWords(
  { signed, covers, after }: DeviceRow,
  verdict: DeviceVerdict | undefined,
  format: Format,
): { readonly text: string; readonly isUnfit: boolean } {
  const isUnfit = verdict?.fits === false
  if (isUnfit) return { text: unfitWords({ signed, covers }), isUnfit }
  const key = `key ${fingerprintOf(signed.key)}`
  if (verdict === undefined) return { text: `Signed by a tablet, ${key}: looking whether it fits.`, isUnfit }
  const said =
    verdict.fits === null ? 'this browser cannot check it, it needs a secure address (https)' : 'the signature fits'
  const late = afterWords(after)
  const which = `Entries 1 to ${covers} were signed by ${tabletWords(verdict)}, ${key}: ${said}`
  return { text: [`${which}${late === null ? '' : `; ${late}`}.`, ...keyWords(verdict, format)].join(' '), isUnfit }
}

function tabletWords({ from }: DeviceVerdict): string {
  switch (from) {
    case 'here':
      return 'this tablet'
    case 'journal':
      return 'a tablet that is known here'
    case 'nowhere':
      return 'a tablet that is not known here'
  }
}

function keyWords({ from, journalled, insteadOf }: DeviceVerdict, format: Format): readonly string[] {
  if (from === 'nowhere') return ['Compare the key with the one under Setup on the tablet that closed the batch.']
  const took = insteadOf.map(
    (each) => `It came in the place of key ${fingerprintOf(each.key)}, ${goneWords(each, format)}.`,
  )
  if (from === 'here' || !journalled?.lost) return took
  return [`That key has been ${goneWords(journalled, format)}; what it signed still verifies.`, ...took]
}
