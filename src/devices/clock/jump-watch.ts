import type { ClockJump } from '../../ports/clock'

/** Two clocks read at one moment: the one on the wall, and the steady one that cannot be set. Both ms. */
export interface ClockPair {
  readonly wallMs: number
  readonly steadyMs: number
  readonly hidden: boolean
}

/** Time services nudge a clock by less than this; a person or a dead battery moves it by more. */
const jumpMs = 2000

/**
 * Compares each pair with the one before it, so that a slow drift never adds up to a jump.
 * The steady clock stands still while most tablets sleep, which makes sleep look like a clock put forward:
 * `maybeSlept` says so where the page was hidden at either reading.
 */
export const watchJumps = (first: ClockPair): ((next: ClockPair) => ClockJump | null) => {
  let last = first
  return (next) => {
    const fromMs = last.wallMs + (next.steadyMs - last.steadyMs)
    const movedMs = next.wallMs - fromMs
    const maybeSlept = movedMs > 0 && (last.hidden || next.hidden)
    last = next
    return Math.abs(movedMs) < jumpMs ? null : { fromMs, toMs: next.wallMs, maybeSlept }
  }
}
