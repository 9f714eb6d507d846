import { standingOf } from '../batch/pulls'
import type { PullDue } from '../batch/stability'
import type { BatchSummary } from '../batch/summary'
import type { App } from './app'

export interface JarDue {
  readonly batch: BatchSummary
  readonly pull: PullDue
}

/** What is left to be pulled of all batches, the first to come due first. Reads heads, never logs. */
export async function readJarsLeft({ log }: Pick<App, 'log'>): Promise<readonly JarDue[]> {
  const heads = await Promise.all(['in-hand', 'follow-up'].map((shelf) => log.heads({ family: 'batch', shelf })))
  // Rows of this family are written by projectBatch alone; a damaged one has no summary.
  const batches = heads.flat().flatMap((head) => (head.summary === null ? [] : [head.summary as BatchSummary]))
  return batches
    .flatMap((batch) => (batch.pulls ?? []).map((pull) => ({ batch, pull })))
    .sort((one, other) => one.pull.dueAtMs - other.pull.dueAtMs)
}

/** Due, or late and still worth pulling. */
export function isToPull(pull: Pick<PullDue, 'fromMs' | 'untilMs' | 'missedAtMs'>, nowMs: number): boolean {
  const standing = standingOf(pull, nowMs)
  return standing === 'due' || standing === 'late'
}
