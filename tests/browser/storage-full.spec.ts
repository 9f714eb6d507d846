import type { Page } from '@playwright/test'
import { expect, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B11] with the storage full an entry stays on the screen as not saved, can be copied, and is recorded once there is room', async ({
  page,
  context,
  baseURL,
}) => {
  const devtools = await context.newCDPSession(page)
  const origin = new URL(baseURL ?? '').origin
  const room = (quotaSize?: number) =>
    devtools.send('Storage.overrideQuotaForOrigin', { origin, ...(quotaSize === undefined ? {} : { quotaSize }) })
  await room(50_000_000)
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  await room(1)

  // The journal feels it first: that entry has one copy. The database goes on for as long as it thinks there is room.
  const bar = page.getByRole('alert').filter({ hasText: 'is not saved yet' })
  const line = run.rung(page, 'Cetearyl alcohol')
  await run.weighByPad(page, '0.5')
  await expect(line).toContainText('0.500 g of 12.500')
  await expect(line).toHaveAttribute('data-state', 'one-copy')
  await askTooMuch(page)
  await run.tapNumber(page, '12')
  await run.recordButton(page).tap()
  await expect(bar).toContainText('Cetearyl alcohol 12.00 g')
  await expect(bar).toContainText('Storage is full')
  await expect(run.reading(page)).toHaveValue('12')
  await expect(line).toContainText('0.500 g of 12.500')

  await bar.getByRole('button', { name: 'Copy' }).click()
  await run.press(page, 'More')
  await run.press(page, /^Note/)
  const note = page.getByLabel('What you see, smell or did')
  await note.focus()
  await page.keyboard.press('Control+v')
  await expect(note).toHaveValue(/^QW-LOT-01-013 · Cetearyl alcohol 12\.00/)
  await page.getByRole('button', { name: 'Close' }).click()

  await bar.getByRole('button', { name: 'Try again' }).click()
  // Long enough for the try to have its answer: room that came earlier would let it through.
  await page.waitForTimeout(1500)
  await expect(bar).toBeVisible()
  await room()
  await bar.getByRole('button', { name: 'Try again' }).click()
  await expect(line).toContainText('12.500 g of 12.500')
  await expect(bar).toHaveCount(0)
})

/** Chromium believes in the room it last saw for half a minute, unless it is asked for more than that. */
const askTooMuch = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        const opening = indexedDB.open('something-else', 1)
        opening.onupgradeneeded = () => opening.result.createObjectStore('films')
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('films', 'readwrite')
          transaction.objectStore('films').put(new Uint8Array(60_000_000), 1)
          transaction.onabort = () => resolve(String(transaction.error?.name))
          transaction.oncomplete = () => resolve('kept')
        }
        opening.onerror = () => resolve(String(opening.error?.name))
      }),
  )
