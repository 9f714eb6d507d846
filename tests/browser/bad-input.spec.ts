import { expect, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'
import { chooseFormula } from './support/start.ts'

test('[B8] a reading that cannot be is told at the number, changes nothing and stays typed', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  const before = await run.inSoFar(page).textContent()
  for (const [text, sentence] of [
    ['twelve', '"twelve" is not a number'],
    ['1.2.5', 'more than one decimal mark'],
    ['-12.5', 'It cannot be below zero'],
    ['0', 'nothing went in'],
    ['99999999999', 'far outside what is weighed'],
  ] as const) {
    await run.reading(page).fill(text)
    await expect(page.locator('[data-place="run"]').getByRole('alert')).toContainText(sentence)
    await expect(run.recordButton(page)).toBeDisabled()
    await run.reading(page).press('Enter')
    await expect(run.reading(page)).toHaveValue(text)
  }
  // More than the balance can carry is only known when it is recorded.
  await run.reading(page).fill('230')
  await run.recordButton(page).click()
  await expect(page.getByText(/is more than Balance 1 can weigh|has room for/).first()).toBeVisible()
  await expect(run.reading(page)).toHaveValue('230')
  await expect(run.inSoFar(page)).toHaveText(before ?? '')

  await page.getByRole('button', { name: /^lot CA-188/ }).click()
  await expect(page.getByRole('dialog').getByRole('button', { name: /^[A-Z]{2}-\d{3}/ })).toHaveText([/CA-188, in use/])
})

test('[B9] a batch size that cannot be is told at the field, and nothing is opened', async ({ page, context }) => {
  await setOutBench(page, context)
  await chooseFormula(page, 'Oat barrier body lotion')
  const size = page.getByLabel('Batch size')
  const open = page.getByRole('button', { name: /Open the batch/ })
  for (const [text, sentence] of [
    ['much', '"much" is not a number'],
    ['5.0.0', 'more than one decimal mark'],
    ['-500', 'It cannot be below zero'],
    ['0', 'It must be more than zero'],
    ['9000 kg', 'far outside a bench'],
    ['0.05', 'than Balance 1 can show'],
  ] as const) {
    await size.fill(text)
    await expect(page.getByRole('region', { name: 'Size and vessels' })).toContainText(sentence)
    await expect(open).toBeDisabled()
    await expect(size).toHaveValue(text)
  }
  await page.reload()
  await expect(size).toHaveValue('0.05')
})
