import type { Page } from '@playwright/test'
import { expect, setOutBench, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B12] a batch is started, weighed, corrected and taken back with the keyboard alone', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await pressOn(page, 'Start a batch')
  await pressOn(page, 'Choose Oat barrier body lotion')
  await expect(page.getByLabel('Batch size')).toBeVisible()
  for (const way of ['Add SG-221', 'Use TO-038', 'Use Balance 1', 'Open the batch']) await pressOn(page, way)

  await expect(run.stepInHand(page)).toBeFocused()
  await run.weighByKeys(page, '348.85')
  await expect(run.stepInHand(page)).toHaveText('Sodium phytate 50 %')
  await run.weighByKeys(page, '1.040')
  await expect(page.getByRole('region', { name: 'Ways on' })).toBeVisible()
  const accept = page.getByRole('button', { name: /Accept as it is/ })
  await page.keyboard.press(((await accept.textContent()) ?? '').trim().slice(0, 1))
  await expect(accept).toHaveAttribute('aria-pressed', 'true')
  await pressOn(page, 'trial batch')
  await pressOn(page, 'Accept 1.040 g')
  await expect(run.stepInHand(page)).toHaveText('Propanediol')

  await run.weighByKeys(page, '20')
  await expect(run.stepInHand(page)).toHaveText('Sclerotium gum')
  await page.keyboard.press('u')
  await expect(run.stepInHand(page)).toHaveText('Propanediol')
  await expect(run.rung(page, 'Propanediol')).toContainText('now · 20.000 g')
  await page.keyboard.press('n')
  await expect(run.stepInHand(page)).toHaveText('Sclerotium gum')
  await page.keyboard.press('p')
  await expect(run.stepInHand(page)).toHaveText('Propanediol')
})

/** Walks on with Tab until something of that name has the focus, and presses Enter. */
async function pressOn(page: Page, name: string): Promise<void> {
  const wanted = page.getByRole('button', { name }).or(page.getByRole('link', { name })).first()
  await wanted.waitFor()
  for (let steps = 0; steps < 120; steps++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) break
    await page.keyboard.press('Tab')
  }
  await expect(wanted).toBeFocused()
  await page.keyboard.press('Enter')
}
