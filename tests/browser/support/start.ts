/** Setting a batch up, by what the screen calls it. */
import type { Page } from '@playwright/test'

/** From the bench to the set-up of a formula: "Oat barrier body lotion". */
export const chooseFormula = async (page: Page, formula: string): Promise<void> => {
  await page.getByRole('link', { name: 'Start a batch' }).click()
  await page.getByRole('button', { name: `Choose ${formula}` }).click()
  await page.getByLabel('Batch size').waitFor()
}

/** Opens a sheet of the set-up, does what is to be done in it, and closes it. */
export const inSheet = async (page: Page, opener: string | RegExp, work: () => Promise<void>): Promise<void> => {
  await page.getByRole('button', { name: opener }).click()
  await work()
  await page.getByRole('button', { name: 'Done', exact: true }).click()
}

/** Settles what stands against the usual size of formula 1 in the demonstration, the quick way. */
export const settleLotion = async (page: Page): Promise<void> => {
  for (const way of ['Add SG-221', 'Use TO-038', /^Use Balance 1/])
    await page.getByRole('button', { name: way }).click()
}

/** Opens the batch; the run stands. */
export const openBatch = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Open the batch' }).click()
  await page.locator('[data-place="run"]').waitFor()
}
