/** When what was just drawn is on the screen: the moment for all that the first screen does without. */
export const afterPaint = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof requestAnimationFrame === 'undefined') resolve()
    else {
      requestAnimationFrame(() => setTimeout(resolve))
      // A page that is hidden draws nothing.
      setTimeout(resolve, 500)
    }
  })

/** When nothing more pressing waits, after half a second at the latest: for what nobody looks at. */
export const whenIdle = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof requestIdleCallback === 'undefined') void afterPaint().then(resolve)
    else requestIdleCallback(() => resolve(), { timeout: 500 })
  })
