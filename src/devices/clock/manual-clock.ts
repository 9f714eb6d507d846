import type { Clock, ClockJump } from '../../ports/clock'

export interface ManualClock extends Clock {
  /** Time passes. */
  advance(byMs: number): void
  /** Somebody sets the clock: listeners hear of it. */
  jumpTo(wallMs: number): void
}

/** A clock that only moves when told to. */
export const manualClock = (startMs: number, offsetMinutes = 0): ManualClock => {
  const listeners = new Set<(jump: ClockJump) => void>()
  let wallMs = startMs
  return {
    nowMs: () => wallMs,
    offsetMinutes: () => offsetMinutes,
    onJump: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
    advance: (byMs) => {
      wallMs += byMs
    },
    jumpTo: (toMs) => {
      const jump = { fromMs: wallMs, toMs, maybeSlept: false }
      wallMs = toMs
      for (const listener of listeners) listener(jump)
    },
  }
}
