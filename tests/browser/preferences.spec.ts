import type { Locator, Page } from '@playwright/test'
import { expect, openAgain, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B13] the left hand and the dark theme are kept, and move and colour the run', async ({ page, context }) => {
  await setOutBench(page, context)
  await page.goto('./#/setup/preferences')
  await page.getByRole('radio', { name: 'dark' }).check()
  await page.getByRole('radio', { name: /^left/ }).check()
  await expect.poll(() => keptHand(page)).toBe('left')
  await page.goto('./#/bench')
  await openAgain(page)
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark')
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  const middle = 640
  expect(await centreOf(run.recordButton(page))).toBeLessThan(middle)
  expect(await centreOf(page.getByRole('navigation', { name: 'Steps of the batch' }))).toBeGreaterThan(middle)
  const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  expect(ground).toBe('rgb(15, 21, 27)')
})

test('[B14] the screen is kept on through a run, and the strip says when it is not', async ({ page, context }) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  const chips = page.getByRole('list', { name: 'Timers and what waits' })
  await expect(chips.getByText('may sleep')).toHaveCount(0)
  await page.getByRole('link', { name: 'Bench' }).click()
  // Granting something else denies the wake lock.
  await context.grantPermissions(['geolocation'])
  await takeUp(page, 'Lotion 013')
  await expect(chips.getByRole('button', { name: 'Screen may sleep' })).toBeVisible()
  await context.clearPermissions()
  await chips.getByRole('button', { name: 'Screen may sleep' }).click()
  await expect(chips.getByText('may sleep')).toHaveCount(0)
})

/** The writing hand as the database has it: a preference is shown at once and written a moment later. */
const keptHand = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    const opening = indexedDB.open('pannikin')
    await new Promise((resolve) => {
      opening.onsuccess = resolve
    })
    const reading: IDBRequest<{ kind: string; body: { hand?: string } }[]> = opening.result
      .transaction('events')
      .objectStore('events')
      .getAll(IDBKeyRange.bound(['settings:preferences'], ['settings:preferences', []]))
    await new Promise((resolve) => {
      reading.onsuccess = resolve
    })
    opening.result.close()
    return JSON.stringify(reading.result.at(-1)?.body).match(/"hand":"(\w+)"/)?.[1]
  })

const centreOf = async (part: Locator): Promise<number> => {
  const box = await part.boundingBox()
  return box === null ? Number.NaN : box.x + box.width / 2
}

test.describe('where a comma is written', () => {
  test.use({ locale: 'de-DE', timezoneId: 'Europe/Berlin' })

  test('[B15] figures are shown and typed with a comma; a point is understood as well', async ({ page, context }) => {
    await setOutBench(page, context)
    await takeUp(page, 'Lotion 013')
    await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
    await expect(page.locator('[data-place="run"]')).toContainText('Target 12,500 g')
    await run.tapNumber(page, '6,2')
    await expect(run.recordButton(page)).toContainText('Record 6,200 g')
    await run.recordButton(page).tap()
    await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('6,200 g of 12,500')
    await run.reading(page).fill('6.3')
    await run.recordButton(page).click()
    await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('12,500 g of 12,500')
  })
})
