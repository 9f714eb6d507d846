import type { App } from '../../app/app'

const keyOf = (batchId: string): string => `in-hand:${batchId}`

/** The step that was last in hand: where a new start of the tablet, or a way round by another batch, comes back to. */
export const keptStep = (drafts: App['drafts'], batchId: string): Promise<string | null> =>
  drafts.read(keyOf(batchId)).catch(() => null)

export const keepStep = (drafts: App['drafts'], batchId: string, step: string | null): void =>
  void drafts.write(keyOf(batchId), step)
