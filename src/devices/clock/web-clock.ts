import type { Clock, ClockJump } from '../../ports/clock'

/** Hears of jumps until the answer is called. */
export type HearJumps = (callback: (jump: ClockJump) => void) => () => void

/** The browser's clock; the watch for its jumps is fetched with the first that listens. */
export const webClock = (fetchWatch: () => Promise<HearJumps>): Clock => ({
  nowMs: () => Date.now(),
  offsetMinutes: () => 0 - new Date().getTimezoneOffset(),
  onJump: (callback) => {
    const stop = fetchWatch().then((hear) => hear(callback))
    return () => void stop.then((end) => end())
  },
})
