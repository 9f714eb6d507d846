import { useLayoutEffect } from 'preact/hooks'

/**
 * Runs `work` after everything that is drawn at one time has been drawn, and before the browser lays it out: asking for
 * the focus or a place to scroll to any later would make it lay the page out, and paint it, twice.
 */
export function useBeforeFrame(work: () => void, inputs: readonly unknown[]): void {
  useLayoutEffect(() => {
    const frame = requestAnimationFrame(work)
    return () => cancelAnimationFrame(frame)
  }, inputs)
}
