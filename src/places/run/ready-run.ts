import type { App, BatchHandle } from '../../app/app'
import { keptStep } from './step-in-hand'

/** A batch that is read, and the step to come back to. */
export interface ReadyRun {
  readonly batchId: string
  readonly handle: BatchHandle
  readonly lastStep: string | null
}

const waiting = new WeakMap<App, ReadyRun>()

/** Reads what a run shows first; null where there is no such batch. */
export async function openRun(app: App, batchId: string): Promise<ReadyRun | null> {
  const [handle, lastStep] = await Promise.all([app.batches.open(batchId), keptStep(app.drafts, batchId)])
  return handle && { batchId, handle, lastStep }
}

/** Reads it before the place is there, so that a start of the app shows the step in hand at once. */
export async function prepareRun(app: App, batchId: string): Promise<void> {
  // What fails here fails again where it is shown.
  const ready = await openRun(app, batchId).catch(() => null)
  if (ready) waiting.set(app, ready)
}

/** What was prepared for this batch, once. */
export function takePrepared(app: App, batchId: string): ReadyRun | undefined {
  const ready = waiting.get(app)
  waiting.delete(app)
  return ready?.batchId === batchId ? ready : undefined
}
