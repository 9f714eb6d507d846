import { type EarlierBatch, earlierBatchOf } from '../batch/adjusting'
import { foldBatch } from '../batch/fold'
import type { BatchState } from '../batch/state'
import type { App } from './app'

/** How far back the shelf is looked through, and how many logs of the formula are read at the most. */
const newest = 60
const readAtMost = 3

/**
 * What the newest finished batches of the same formula tell of an adjustment, the newest first. It ends with the first
 * one that tells anything; a log that cannot be folded tells nothing.
 */
export async function earlierBatches(
  { batches, log }: Pick<App, 'batches' | 'log'>,
  state: BatchState,
  check: string,
): Promise<readonly EarlierBatch[]> {
  const { formulaId, id } = state.header
  const finished = await batches.finished(newest)
  const own = finished
    .filter((each) => each.formulaId === formulaId && each.id !== id)
    .filter(({ stage, decision }) => stage === 'closed' && decision !== 'reject')
    .sort((one, other) => other.openedAtMs - one.openedAtMs)
  for (const { id: earlier } of own.slice(0, readAtMost)) {
    const told = await toldBy(log, earlier, check)
    if (told !== null) return [told]
  }
  return []
}

async function toldBy(log: App['log'], batch: string, check: string): Promise<EarlierBatch | null> {
  try {
    return earlierBatchOf(foldBatch(await log.read(`batch:${batch}`)), check)
  } catch {
    return null
  }
}
