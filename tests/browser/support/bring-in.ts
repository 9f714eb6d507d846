/** A batch that was made somewhere else, brought in as its file, with its pictures. */
import { expect, type Page } from '@playwright/test'
import { batchesText } from '../../house/demonstration/files'

export async function bringIn(page: Page, ...logs: Parameters<typeof batchesText>[0]): Promise<void> {
  await page.goto('./#/setup/storage')
  const file = { name: 'lotion.ndjson', mimeType: 'application/x-ndjson', buffer: Buffer.from(batchesText(logs)) }
  await page.locator('input[type=file]').first().setInputFiles(file)
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.getByText(/entries came in from lotion.ndjson/)).toBeVisible()
}
