import type { BrowserContext, Page } from '@playwright/test'

/** Opens the app at a route such as `#/setup`, and waits until it stands and is kept for offline use. */
export const openApp = async (page: Page, hash = ''): Promise<void> => {
  await page.goto(`./${hash}`)
  await appStarted(page)
  await appKept(page)
}

/** The service worker has the app, and answers for it. */
export const appKept = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await navigator.serviceWorker.ready
    if (navigator.serviceWorker.controller !== null) return
    await new Promise((resolve) =>
      navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true }),
    )
  })

/** The app has said that it runs. */
export const appStarted = async (page: Page): Promise<void> => {
  await page.locator('html[data-started]').waitFor({ state: 'attached' })
}

/** Cuts the network off, for pages and workers alike. */
export const goOffline = (context: BrowserContext): Promise<void> => context.setOffline(true)
