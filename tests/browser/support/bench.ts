/** The bench as a person finds it: the demonstration set out, on the morning it was made for, without a network. */
import type { BrowserContext, Page } from '@playwright/test'
import { appStarted, goOffline, openApp } from './app.ts'
import { test as base, expect } from './test.ts'

export { expect }

/** A few minutes after the last entry of the demonstration's batches in hand; a Tuesday. */
export const morning = '2026-11-24T10:40:00Z'

/** Tests whose pages live on that morning. Their clock runs by itself, and jumps where a test moves it on. */
export const test = base.extend({
  context: async ({ context }, use) => {
    await context.clock.install({ time: morning })
    await use(context)
  },
})

/** Sets the demonstration out, waits until all of the app is kept, and cuts the network off. */
export const setOutBench = async (page: Page, context: BrowserContext): Promise<void> => {
  await openApp(page)
  await page.getByRole('button', { name: 'Load the demonstration' }).click()
  await page
    .getByRole('button', { name: /^Go on/ })
    .first()
    .waitFor({ timeout: 30_000 })
  await goOffline(context)
}

/** From the bench into a batch in hand: "Lotion 013". */
export const takeUp = async (page: Page, batch: string): Promise<void> => {
  await page.getByRole('button', { name: `Go on: ${batch}` }).click()
  await page.locator('[data-place="run"]').waitFor()
}

/** Opens the app again in the same page, as a reload or a new start of the tablet does. */
export const openAgain = async (page: Page): Promise<void> => {
  await page.reload()
  await appStarted(page)
}

/** Lets so much time pass at once: "20:00". */
export const passes = (page: Page, time: string): Promise<void> => page.clock.fastForward(time)
