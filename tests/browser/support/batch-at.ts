/** A batch that the app's own functions have brought up to a step, as a file to bring in. */
import { expect, type Page } from '@playwright/test'
import { batchesText } from '../../house/demonstration/files.ts'
import { openTestBench } from '../../support/batch.ts'
import { formulas, headerFor } from '../../support/formulas.ts'
import { runUpTo } from '../../support/run.ts'

/** The file of a batch of a demonstration formula with everything done before the step named. */
export function batchAt(formula: keyof typeof formulas, step: string): Buffer {
  const bench = openTestBench(headerFor(formulas[formula]))
  runUpTo(bench, step)
  return Buffer.from(batchesText([bench]))
}

/** Brings the file in where files come in; its batch is `one`. */
export async function bringBatch(page: Page, buffer: Buffer): Promise<void> {
  await page.goto('./#/setup/storage')
  await page
    .getByLabel('Bring in a file')
    .setInputFiles({ name: 'batch.ndjson', mimeType: 'application/x-ndjson', buffer })
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.locator('.bring')).toContainText('came in')
}
