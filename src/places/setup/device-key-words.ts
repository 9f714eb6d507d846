import type { Format } from '../../app/format'
import { goneWords } from '../../app/sign/key-words'
import { fingerprintOf, type JournalledKey } from '../../batch/key-trail'

export interface KeysHere {
  /** The key that is kept here. */
  readonly own: string | null
  readonly madeAt: string | null
  /** Journalled, not kept here, and not said to be gone. */
  readonly elsewhere: readonly JournalledKey[]
  /** Said to be gone. */
  readonly lost: readonly JournalledKey[]
}

export const keysHereOf = (own: string | null, known: readonly JournalledKey[]): KeysHere => ({
  own,
  madeAt: known.find(({ key }) => key === own)?.madeAt ?? null,
  elsewhere: known.filter(({ key, lost }) => key !== own && lost === undefined),
  lost: known.filter(({ key, lost }) => key !== own && lost !== undefined),
})

interface KeyLines {
  readonly says: string
  /** Keys were journalled, and none is here. */
  readonly missing: string | null
  readonly more: readonly string[]
}

export function keyLines(here: KeysHere, format: Format): KeyLines {
  const { own, elsewhere, lost } = here
  const names = elsewhere.map(({ key }) => fingerprintOf(key)).join(', ')
  const isWithout = own === null && elsewhere.length > 0
  return {
    says: ownWords(here, format),
    missing: isWithout
      ? `Key ${names} is not on this tablet. The next batch that is closed makes another, and that is written down; what was signed before still verifies.`
      : null,
    more: [
      ...(own !== null && elsewhere.length > 0 ? [`Known of other tablets: ${names}.`] : []),
      ...lost.map(
        (each) => `Earlier key ${fingerprintOf(each.key)}: ${goneWords(each, format)}; what it signed still verifies.`,
      ),
    ],
  }
}

function ownWords({ own, madeAt, elsewhere, lost }: KeysHere, format: Format): string {
  if (own !== null) return `Key ${fingerprintOf(own)}${madeAt === null ? '' : `, made on ${format.date(madeAt)}`}.`
  if (elsewhere.length > 0 || lost.length > 0) return 'It has none now.'
  return 'It has none yet: one is made when a batch is first closed.'
}
