/** A picture goes with its batch: into the record, out in its file, and in again elsewhere. */
import { readFileSync, truncateSync, writeFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { pngOf } from '../support/png.ts'
import { openApp } from './support/app.ts'
import { batchAt, bringBatch } from './support/batch-at.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import { watchContext } from './support/guard.ts'

test('[B45] a picture from a file is made small, stands in the record, and comes along to another tablet', async ({
  page,
  context,
  browser,
}, info) => {
  await setOutBench(page, context)
  await bringBatch(page, batchAt('lotion', 'c-preservative'))
  await page.goto('./#/run/one/c-preservative')
  await page.getByRole('button', { name: 'More' }).first().click()
  await page.getByRole('button', { name: /^Picture/ }).click()
  const sheet = page.getByRole('dialog', { name: 'Picture' })
  const keep = sheet.getByRole('button', { name: /^Put it into the record/ })
  const choose = (name: string, mimeType: string, buffer: Buffer) =>
    sheet.getByLabel('Choose a file').setInputFiles({ name, mimeType, buffer })
  await choose('list.csv', 'text/csv', Buffer.from('a;b'))
  await expect(sheet).toContainText('That file is no picture.')
  await choose('broken.png', 'image/png', Buffer.from('no pixels in here'))
  await expect(sheet).toContainText('cannot read that picture')
  const huge = info.outputPath('huge.jpg')
  writeFileSync(huge, '')
  truncateSync(huge, 61 * 1024 * 1024)
  await sheet.getByLabel('Choose a file').setInputFiles(huge)
  await expect(sheet).toContainText('The file is 64 MB. Choose a picture of at most 60 MB.')
  await expect(keep).toBeDisabled()

  await choose(
    'cup.png',
    'image/png',
    pngOf(2400, 1800, (x, y) => (x >> 4) * 7 + (y >> 3) * 5 + ((x * y) % 23)),
  )
  await expect(sheet.getByRole('img')).toBeVisible()
  await sheet.getByLabel('What it shows').fill('no lumps left')
  await keep.click()
  await expect(sheet).toHaveCount(0)

  await page.goto('./#/records/one')
  await expectPicture(page)
  await expect(page.getByRole('region', { name: 'Pictures' }).getByRole('figure')).toHaveCount(1)
  await page.getByRole('button', { name: 'Save or share' }).click()
  const [sheetOfPaper] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a page (HTML)' }).click(),
  ])
  const html = info.outputPath('record.html')
  await sheetOfPaper.saveAs(html)
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save this batch/ }).click(),
  ])
  const file = readFileSync(await download.path())
  expect(file.length).toBeLessThan(1_000_000)

  const { origin } = new URL(page.url())
  const elsewhere = await browser.newContext({ baseURL: `${origin}/`, locale: 'en-GB' })
  const wrongs = watchContext(elsewhere, origin)
  const other = await elsewhere.newPage()
  await openApp(other, '#/setup/storage')
  await bringBatch(other, file)
  await other.goto('./#/records/one')
  await expectPicture(other)
  expect(wrongs).toEqual([])

  const asked: string[] = []
  elsewhere.on('request', (request) => asked.push(request.url()))
  await other.goto(`file://${html}`)
  await expectPicture(other)
  await expect(
    other
      .getByRole('figure')
      .filter({ hasText: /^no lumps left .*RK/ })
      .getByRole('img'),
  ).toHaveAttribute('src', /^data:image\/webp;base64,/)
  expect(asked).toEqual([`file://${html}`])
  await elsewhere.close()
})

async function expectPicture(page: Page): Promise<void> {
  const picture = page.getByRole('region', { name: 'Pictures' }).getByRole('img', { name: 'no lumps left' })
  await expect(picture).toBeVisible()
  await expect
    .poll(() =>
      picture.evaluate((img) => [(img as HTMLImageElement).naturalWidth, (img as HTMLImageElement).naturalHeight]),
    )
    .toEqual([1600, 1200])
}
