import type { ArchivePreview } from '../../ports/archive'
import type { App } from '../app'
import { verdictsOf } from './device-verdict'
import { signedWords, unfitWords } from './key-words'

/** What a file's signatures of tablets are worth, before anything of it comes in. */
export interface SignedPreview {
  /** All of them in one sentence; null where there is none. */
  readonly says: string | null
  /** Each that does not fit. */
  readonly unfit: readonly string[]
}

export async function signedPreview(
  app: Pick<App, 'log' | 'deviceKeys'>,
  signed: ArchivePreview['signed'],
): Promise<SignedPreview> {
  const verdicts = await verdictsOf(app, signed)
  return {
    says: signedWords([...verdicts.values()]),
    unfit: signed.flatMap((row) => (verdicts.get(row.entry)?.fits === false ? [`${row.of}: ${unfitWords(row)}`] : [])),
  }
}
