import { type ClockPair, watchJumps } from './jump-watch'
import type { HearJumps } from './web-clock'

const tickMs = 1000

/** Looks at the clocks every second and whenever the page comes back. */
export const hearJumps: HearJumps = (callback) => {
  const check = watchJumps(readClocks())
  const look = (): void => {
    const jump = check(readClocks())
    if (jump !== null) callback(jump)
  }
  const ticking = setInterval(look, tickMs)
  document.addEventListener('visibilitychange', look)
  window.addEventListener('pageshow', look)
  return () => {
    clearInterval(ticking)
    document.removeEventListener('visibilitychange', look)
    window.removeEventListener('pageshow', look)
  }
}

const readClocks = (): ClockPair => ({
  wallMs: Date.now(),
  steadyMs: performance.now(),
  hidden: document.visibilityState === 'hidden',
})
