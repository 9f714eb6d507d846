/** A picture goes with its batch: into the record, out in its file, and in again elsewhere. */
import { readFileSync } from 'node:fs'
import { crc32, deflateSync } from 'node:zlib'
import type { Page } from '@playwright/test'
import { openApp } from './support/app.ts'
import { batchAt, bringBatch } from './support/batch-at.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import { watchContext } from './support/guard.ts'

test('[B45] a picture from a file is made small, stands in the record, and comes along to another tablet', async ({
  page,
  context,
  browser,
}) => {
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
  await expect(keep).toBeDisabled()

  await choose('cup.png', 'image/png', pngOf(2400, 1800))
  await expect(sheet.getByRole('img')).toBeVisible()
  await sheet.getByLabel('What it shows').fill('no lumps left')
  await keep.click()
  await expect(sheet).toHaveCount(0)

  await page.goto('./#/records/one')
  await expectPicture(page)
  await page.getByRole('button', { name: 'Save or share' }).click()
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
  await elsewhere.close()
  expect(wrongs).toEqual([])
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

/** A PNG of grey noise over a slope, larger than what is kept. */
function pngOf(width: number, height: number): Buffer {
  const rows = Buffer.alloc((width + 1) * height)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      rows[y * (width + 1) + 1 + x] = ((x >> 4) * 7 + (y >> 3) * 5 + ((x * y) % 23)) & 255
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 0, 0, 0, 0], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, check])
}
