/** Whose word stands under a batch, and whether the record is still as it was written. */
import type { Page } from '@playwright/test'
import { batchAt, bringBatch } from './support/batch-at.ts'
import { expect, openAgain, setOutBench, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B44] a PIN is set, asked for at a second check and at closing, and the record, signed by the tablet too, verifies as intact', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await setPin(page, 'Milo Ormerand', '4711')
  await bringBatch(page, batchAt('lotion', 'c-preservative'))
  await page.goto('./#/run/one/c-preservative')
  await run.typeKeys(page, '5.00')
  await page.getByRole('group', { name: 'Checked by' }).getByRole('button', { name: 'MO' }).click()
  await run.recordButton(page).click()

  const second = page.getByRole('dialog', { name: 'Checked by a second person' })
  await expect(second).toContainText('5.000 g')
  const pin = page.getByRole('dialog').getByLabel('PIN of Milo Ormerand')
  await pin.fill('0000')
  await second.getByRole('button', { name: 'Sign and record' }).click()
  await expect(second.getByText('That is not the PIN. 4 tries are left before a wait.').first()).toBeVisible()
  await pin.fill('4711')
  await pin.press('Enter')
  await expect(second).toHaveCount(0)
  await expect(run.stepInHand(page)).toHaveText('Tocopherol')

  await page.getByRole('button', { name: 'More' }).first().click()
  await page.getByRole('button', { name: /^Close the batch/ }).click()
  const close = page.getByRole('dialog', { name: 'Close the batch' })
  await close.getByRole('radio', { name: /^Hold/ }).check()
  await close.getByLabel('Why it is closed so').fill('to see how far it comes')
  const checks = close.getByRole('group', { name: /^Checked by/ })
  await checks.getByRole('button', { name: 'MO' }).click()
  await pin.fill('4711')
  await close.getByRole('button', { name: /^Close the batch/ }).click()
  await expect(close).toHaveCount(0)

  await page.goto('./#/records/one')
  const signed = page.getByRole('region', { name: 'Signatures' })
  await expect(signed).toContainText(/Signed: performed.*RK.*by name, without PIN/)
  await expect(signed).toContainText(/Signed: checked.*MO.*with a PIN valid since 24 Nov 2026/)
  await expect(signed).toContainText(/Checked at the step:.*MO.*with a PIN/)
  await page.getByRole('button', { name: 'Verify' }).click()
  await expect(page.getByText(/^Intact: \d+ entries, head [0-9a-f]{12}\.$/).first()).toBeVisible()
  await expect(page.getByText('The second copy is as it was written.')).toBeVisible()
  await expect(page.getByText('1 signature of a tablet fits.')).toBeVisible()
  const signedHere = /Entries 1 to \d+ were signed by this tablet, key(?: [0-9a-f]{4}){4}: the signature fits\./
  const key = await page.locator('#verification').getByText(signedHere).textContent()
  await openAgain(page)
  await expect(page.locator('#verification')).toContainText(key ?? '')
})

async function setPin(page: Page, name: string, pin: string): Promise<void> {
  await page.goto('./#/setup/people')
  await page.getByRole('button', { name }).click()
  await page.getByRole('button', { name: 'PIN for signing' }).click()
  const sheet = page.getByRole('dialog', { name: `PIN of ${name}` })
  await expect(sheet).toContainText('It does not prove who somebody is.')
  await sheet.getByLabel('New PIN').fill(pin)
  await sheet.getByLabel('The same again').fill(pin)
  await sheet.getByRole('button', { name: 'Set the PIN' }).click()
  await expect(sheet).toHaveCount(0)
}
