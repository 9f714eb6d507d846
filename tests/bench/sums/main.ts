/** The fold, timed where it runs in earnest: in the browser, on validated events. */
import './formulas'
import type { Event } from '../../../src/batch/event'
import { extendBatch } from '../../../src/batch/extend'
import { foldBatch } from '../../../src/batch/fold'

export interface FoldTimes {
  /** Each of `rounds` folds of the whole log, ms. */
  readonly foldMs: readonly number[]
  /** Each of `rounds` times that the last entry was folded into a state that has all the others, ms. */
  readonly appendMs: readonly number[]
}

declare global {
  interface Window {
    timeFold: (events: readonly Event[], rounds: number) => FoldTimes
  }
}

window.timeFold = (events, rounds) => {
  const before = foldBatch(events.slice(0, -1))
  const last = events.slice(-1)
  const rounded = Array.from({ length: rounds }, () => ({
    foldMs: timeOf(() => foldBatch(events)),
    appendMs: timeOf(() => extendBatch(before, last)),
  }))
  return { foldMs: rounded.map(({ foldMs }) => foldMs), appendMs: rounded.map(({ appendMs }) => appendMs) }
}

function timeOf(work: () => unknown): number {
  const startMs = performance.now()
  work()
  return performance.now() - startMs
}
