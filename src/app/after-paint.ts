/** When what was just drawn is on the screen: the moment for all that the first screen does without. */
export const afterPaint = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof requestAnimationFrame === 'undefined') resolve()
    else requestAnimationFrame(() => setTimeout(resolve))
  })
