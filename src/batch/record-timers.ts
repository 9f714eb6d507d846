import { entriesOf, type Stamp } from './record-entries'
import type { BatchState } from './state'

/** A timer as it was set and as it was stopped. Moments and spans in ms. */
export interface TimerRow extends Stamp {
  readonly label: string
  readonly step?: string
  readonly plannedMs: number
  /** Until somebody stopped the bell; absent while it runs. */
  readonly actualMs?: number
  /** After the deadline; below zero where it was ended before. */
  readonly lateMs?: number
}

export function timerRows(state: BatchState, initialsOf: (id: string) => string): readonly TimerRow[] {
  return entriesOf(state, 'timer-started', initialsOf).flatMap(({ event, struck, ...stamp }) => {
    const { timer: id, label, step, startedAtMs, deadlineAtMs } = event.body
    if (struck) return []
    const acknowledged = state.timers.get(id)?.acknowledged
    return [
      {
        ...stamp,
        atMs: startedAtMs,
        label,
        plannedMs: deadlineAtMs - startedAtMs,
        ...(step === undefined ? {} : { step }),
        ...(acknowledged ? { actualMs: acknowledged.atMs - startedAtMs, lateMs: acknowledged.lateMs } : {}),
      },
    ]
  })
}
