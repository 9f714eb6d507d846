import type { ArchivePreview } from '../../ports/archive'
import type { App } from '../app'
import { verdictsOf } from './device-verdict'
import { signedWords, unfitWords } from './key-words'

/** What a file's signatures of tablets are worth, before anything of it comes in. */
export interface SignedPreview {
  /** Each that does not fit. */
  readonly unfit: readonly string[]
  /** Where there is no such one, all of them in one sentence; null where there is nothing to say. */
  readonly says: string | null
}

export async function signedPreview(
  app: Pick<App, 'log' | 'deviceKeys'>,
  signed: ArchivePreview['signed'],
): Promise<SignedPreview> {
  const verdicts = await verdictsOf(app, signed)
  const unfit = signed.flatMap((row) =>
    verdicts.get(row.entry)?.fits === false ? [`${row.of}: ${unfitWords(row)}`] : [],
  )
  return { unfit, says: unfit.length > 0 ? null : signedWords([...verdicts.values()]) }
}
