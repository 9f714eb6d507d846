import type { Clock, ClockJump } from '../../ports/clock'
import { type ClockPair, watchJumps } from './jump-watch'

const tickMs = 1000

/** The browser's clock, looked at every second and whenever the page comes back. */
export const webClock = (): Clock => {
  const listeners = new Set<(jump: ClockJump) => void>()
  const check = watchJumps(readClocks())

  const look = (): void => {
    const jump = check(readClocks())
    if (jump !== null) for (const listener of listeners) listener(jump)
  }
  setInterval(look, tickMs)
  document.addEventListener('visibilitychange', look)
  window.addEventListener('pageshow', look)

  return {
    nowMs: () => Date.now(),
    offsetMinutes: () => 0 - new Date().getTimezoneOffset(),
    onJump: (callback) => {
      listeners.add(callback)
      return () => listeners.delete(callback)
    },
  }
}

const readClocks = (): ClockPair => ({
  wallMs: Date.now(),
  steadyMs: performance.now(),
  hidden: document.visibilityState === 'hidden',
})
