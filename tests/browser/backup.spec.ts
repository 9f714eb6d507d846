/** The one copy that leaves the tablet, and the way back from it. */
import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { appStarted } from './support/app.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import { fileOfAnotherTablet } from './support/other-file.ts'

test('[B49] a backup is verified; all deleted, the whole comes back from it; in a full app nothing is replaced', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.goto('./#/setup/storage')
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a backup file' }).click(),
  ])
  const saved = readFileSync(await download.path(), 'utf8')
  const entries = saved.trimEnd().split('\n').length - 1
  await expect(
    page.getByRole('status').filter({ hasText: `On its way out: ${entries} entries of 14 batches, verified.` }),
  ).toBeVisible()
  await expect(page.getByText(/Last backup just now, .* with 14 batches\. Nothing is new since\./)).toBeVisible()

  await page.getByRole('button', { name: 'Show what would go' }).click()
  const hold = page.getByRole('button', { name: /Delete it all/ })
  await hold.hover()
  await page.mouse.down()
  await page.getByText('No backup file has been saved from here yet.').waitFor()
  await page.mouse.up()
  await appStarted(page)

  await bring(page, saved)
  await expect(row(page, 'Batches')).toHaveText(['Batches', '14', '0', '0', '0'])
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.getByText(`${entries} entries came in from backup.ndjson.`)).toBeVisible()
  await page.goto('./#/')
  await page.getByRole('button', { name: 'Go on: Lotion 013' }).waitFor()

  await page.goto('./#/setup/preferences')
  await page.getByRole('radio', { name: /^left/ }).check()
  await bring(page, fileOfAnotherTablet(saved))
  await expect(row(page, 'Batches')).toHaveText(['Batches', '0', '0', '14', '0'])
  await expect(row(page, 'People')).toHaveText(['People', '1', '0', '2', '1'])
  const differing = page.getByRole('listitem')
  await expect(differing.filter({ hasText: 'What is here stays; that one stays out.' })).toBeVisible()
  await expect(differing.filter({ hasText: 'Preferences of this tablet' })).toContainText('The file has the later one')
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.getByText('3 entries came in from backup.ndjson.')).toBeVisible()
  await page.goto('./#/setup/people')
  await expect(page.getByText('New Here')).toBeVisible()
  await expect(page.getByText('Somebody Else')).toHaveCount(0)
})

async function bring(page: Page, text: string): Promise<void> {
  await page.goto('./#/setup/storage')
  const buffer = Buffer.from(text)
  await page.getByLabel('Bring in a file').setInputFiles({ name: 'backup.ndjson', mimeType: '', buffer })
  await page.getByText('backup.ndjson is whole').waitFor()
}

/** The cells of one kind in the table of what a file would bring. */
const row = (page: Page, kind: string) => page.getByRole('row').filter({ hasText: kind }).locator('th, td')
