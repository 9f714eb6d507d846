/** The one copy that leaves the tablet, and the way back from it. */
import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { takePicture } from '../support/picture.ts'
import { wholeBatch } from '../support/whole-batch.ts'
import { appStarted } from './support/app.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import { bringIn } from './support/bring-in.ts'
import { fileOfAnotherTablet } from './support/other-file.ts'

test('[B49] a backup is verified; all deleted, the whole comes back from it; in a full app nothing is replaced', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  const lotion = wholeBatch()
  await bringIn(page, lotion, takePicture(lotion, 'Filled jars', 320, 240))
  const jars = await jarsLeft(page)
  await page.goto('./#/setup/storage')
  const saved = await saveBackup(page)
  const entries = saved.trimEnd().split('\n').length - 1
  await expect(
    page.getByRole('status').filter({ hasText: `On its way out: ${entries} entries of 15 batches, verified.` }),
  ).toBeVisible()
  await expect(page.getByText(/Last backup just now, .* with 15 batches\. Nothing is new since\./)).toBeVisible()

  await page.getByRole('button', { name: 'Show what would go' }).click()
  const hold = page.getByRole('button', { name: /Delete it all/ })
  await hold.hover()
  await page.mouse.down()
  await page.getByText('No backup file has been saved from here yet.').waitFor()
  await page.mouse.up()
  await appStarted(page)

  await bring(page, saved)
  await expect(row(page, 'Batches')).toHaveText(['Batches', '15', '0', '0', '0'])
  await expect(row(page, 'Pictures')).toHaveText(['Pictures', '1', '0', '0', '0'])
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.getByText(`${entries} entries came in from backup.ndjson.`)).toBeVisible()
  // Batches, jars and pictures are what they were, to the last hash: the same entries leave again.
  expect(withoutSettings(await saveBackup(page))).toEqual(withoutSettings(saved))
  expect(await jarsLeft(page)).toEqual(jars)
  await page.goto(`./#/records/${lotion.state.header.id}`)
  const picture = page.getByRole('img', { name: 'Filled jars' })
  await expect.poll(() => picture.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(320)
  await page.goto('./#/')
  await page.getByRole('button', { name: 'Go on: Lotion 013' }).waitFor()

  await page.goto('./#/setup/preferences')
  await page.getByRole('radio', { name: /^left/ }).check()
  await bring(page, fileOfAnotherTablet(saved))
  await expect(row(page, 'Batches')).toHaveText(['Batches', '0', '0', '15', '0'])
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

async function saveBackup(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a backup file' }).click(),
  ])
  return readFileSync(await download.path(), 'utf8')
}

/** Entries of a file; that a backup was saved is noted in the preferences. */
const withoutSettings = (file: string): readonly string[] =>
  file
    .split('\n')
    .slice(1)
    .filter((line) => !line.includes('"stream":"settings:'))

/** What is still to be pulled, as it stands on the page of all pulls. */
async function jarsLeft(page: Page): Promise<readonly string[]> {
  await page.goto('./#/records/pulls')
  const jars = page
    .getByRole('main')
    .getByRole('link')
    .filter({ hasText: /week|cycle/ })
  await jars.first().waitFor()
  return jars.allTextContents()
}

async function bring(page: Page, text: string): Promise<void> {
  await page.goto('./#/setup/storage')
  const buffer = Buffer.from(text)
  await page.getByLabel('Bring in a file').setInputFiles({ name: 'backup.ndjson', mimeType: '', buffer })
  await page.getByText('backup.ndjson is whole').waitFor()
}

/** The cells of one kind in the table of what a file would bring. */
const row = (page: Page, kind: string) => page.getByRole('row').filter({ hasText: kind }).locator('th, td')
