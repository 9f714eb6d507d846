import type { BatchState } from '../../batch/state'
import type { BatchSummary } from '../../batch/summary'

/** A timer on the strip. `batchName` only where it is another batch's. Negative `leftMs` is how late it is. */
export interface TimerFact {
  readonly batch: string
  readonly batchName?: string
  readonly timer: string
  readonly label: string
  readonly step?: string
  readonly deadlineAtMs: number
  readonly leftMs: number
  readonly ringing: boolean
}

/** Every timer that runs or rings, of all batches in hand; the next to ring first. */
export function timersOf(
  own: BatchState,
  ownId: string,
  inHand: readonly BatchSummary[],
  nowMs: number,
): readonly TimerFact[] {
  const here: TimerFact[] = [...own.timers.values()]
    .filter((timer) => timer.acknowledged === undefined)
    .map((timer) => ({
      batch: ownId,
      timer: timer.id,
      label: timer.label,
      ...(timer.step === undefined ? {} : { step: timer.step }),
      deadlineAtMs: timer.deadlineAtMs,
      leftMs: timer.deadlineAtMs - nowMs,
      ringing: timer.deadlineAtMs <= nowMs,
    }))
  const elsewhere = inHand
    .filter((summary) => summary.id !== ownId)
    .flatMap((summary) =>
      summary.timers.map(
        (timer): TimerFact => ({
          batch: summary.id,
          batchName: summary.shortName,
          timer: timer.id,
          label: timer.label,
          deadlineAtMs: timer.deadlineAtMs,
          leftMs: timer.deadlineAtMs - nowMs,
          ringing: timer.deadlineAtMs <= nowMs,
        }),
      ),
    )
  return [...here, ...elsewhere].sort((a, b) => a.leftMs - b.leftMs)
}

/** Checks of any batch in hand whose time has come. */
export const checksDueNow = (inHand: readonly BatchSummary[], nowMs: number): number =>
  inHand.reduce((sum, { checksDue }) => sum + checksDue.filter((check) => check.dueAtMs <= nowMs).length, 0)
