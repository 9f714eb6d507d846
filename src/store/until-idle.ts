/** Until the page has nothing more pressing to do, for so many ms at most. */
export const untilIdle = (longestMs: number): Promise<void> =>
  new Promise((resolve) => {
    if (typeof requestIdleCallback === 'undefined') setTimeout(resolve)
    else requestIdleCallback(() => resolve(), { timeout: longestMs })
  })
