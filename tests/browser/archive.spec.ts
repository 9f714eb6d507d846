import type { Locator, Page } from '@playwright/test'
import { goOffline, openApp } from './support/app.ts'
import { expect, morning, setOutBench, test } from './support/bench.ts'

test('[B16] everything saved as a file comes back whole on an empty tablet, and a second time changes nothing', async ({
  page,
  context,
  browser,
  baseURL,
}) => {
  await setOutBench(page, context)
  await page.getByRole('link', { name: 'Records' }).click()
  await showAll(page)
  const before = await rows(page).allTextContents()
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save everything' }).click()
  const file = await (await downloading).path()

  const empty = await browser.newContext({ baseURL: baseURL ?? '' })
  await empty.clock.install({ time: morning })
  const tablet = await empty.newPage()
  await openApp(tablet, '#/records')
  await goOffline(empty)
  await expect(tablet.getByText('No record yet')).toBeVisible()
  await tablet.getByLabel('Bring in a file').setInputFiles({
    name: 'everything.ndjson',
    mimeType: 'application/x-ndjson',
    buffer: await import('node:fs/promises').then(({ readFile }) => readFile(file)),
  })
  await tablet.getByRole('button', { name: 'Bring it in' }).click()
  await expect(tablet.getByText(/entries came in/)).toBeVisible()
  await showAll(tablet)
  expect(await rows(tablet).allTextContents()).toEqual(before)
  await tablet.getByRole('link', { name: 'Formulas' }).click()
  await expect(tablet.getByRole('list', { name: 'Formulas' }).getByRole('listitem')).toHaveCount(4)

  await tablet.getByLabel('Bring in a file').setInputFiles(file)
  await expect(tablet.getByText(/0 entries new here/)).toBeVisible()
  await expect(tablet.getByRole('button', { name: 'Bring it in' })).toBeDisabled()
  await empty.close()
})

const rows = (page: Page): Locator => page.getByRole('main').getByRole('link', { name: /QW-/ })

/** Fourteen batches: two in hand, twelve finished. */
async function showAll(page: Page): Promise<void> {
  await expect(rows(page).first()).toBeVisible()
  const more = page.getByRole('button', { name: 'Show earlier ones' })
  await expect(async () => {
    if (await more.isVisible()) await more.click({ timeout: 500 })
    await expect(rows(page)).toHaveCount(14, { timeout: 500 })
  }).toPass()
}
