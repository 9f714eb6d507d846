/** What can be known of a formula before the bench: checks, another size from stock, the label, and a pre-mix to weigh. */
import { expect, setOutBench, test } from './support/bench.ts'
import { rung, takeStep, weighByPad } from './support/run.ts'
import { chooseFormula, openBatch } from './support/start.ts'

test('[B36] checks are read with their figures, the stock is scaled into bottles and started, the label is copied', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.getByRole('link', { name: 'Formulas' }).click()
  await page.getByRole('link', { name: /^Everyday shampoo/ }).click()
  const checks = page.getByRole('region', { name: 'Checks' })
  await expect(checks.getByText(/^In order: the total, use levels/)).toBeVisible()
  await checks.getByText('Worth knowing').click()
  await expect(checks.getByText(/^Active matter: anionic 6\.00\s%/)).toBeVisible()
  await checks.getByText('Not known').click()
  await expect(
    checks.getByText(/^0\.4\s% · limit at most 0\.01\s% · Regulation \(EC\) 1223\/2009, Annex III/),
  ).toBeVisible()

  await page.getByRole('button', { name: /^Label draft/ }).click()
  const label = page.getByRole('dialog', { name: 'Label draft' })
  await expect(label.getByText(/^Aqua, Sodium Lauroyl Sarcosinate, Lauramidopropyl Betaine/)).toBeVisible()
  await label.getByRole('button', { name: 'Copy the list' }).click()
  await expect(label.getByRole('button', { name: 'Copied' })).toBeFocused()
  await label.getByRole('button', { name: 'Close' }).click()

  await page.getByRole('button', { name: /^Scale/ }).click()
  const scale = page.getByRole('dialog', { name: 'Scale' })
  await scale.getByRole('radio', { name: 'Units to fill' }).check({ force: true })
  await expect(scale.getByText('Type a number first.')).toBeVisible()
  await scale.getByLabel('Density of the product').fill('1.02')
  await expect(scale.getByText(/runs out first: the stock makes/)).toBeVisible()
  await scale.getByLabel('How many').fill('3')
  await expect(scale.getByText('3 units')).toBeVisible()
  // 3 × 200 mL × 1.02 g/mL and 1 % lost on the way: 618.2 g.
  await scale.getByRole('button', { name: /^Start with 618\.2/ }).click()
  await expect(page.getByLabel('Batch size')).toHaveValue('618.2')
})

test('[B37] a line too small to weigh is pre-mixed at Start, and the run has it made and weighed', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await chooseFormula(page, 'Oat barrier body lotion')
  for (const way of ['Add SG-221', 'Use TO-038']) await page.getByRole('button', { name: way }).click()
  await page.getByRole('button', { name: /^Pre-mix 1 in 10/ }).click()
  const sheet = page.getByRole('dialog', { name: /^Pre-mix Sodium phytate/ })
  await expect(sheet.getByText(/Make it from 2\.00\sg of .* and 18\.00\sg of/)).toBeVisible()
  await expect(sheet.getByRole('row', { name: /^Water, purified 366\.35 g 357\.35 g/ })).toBeVisible()
  await sheet.getByRole('button', { name: 'Weigh it so' }).click()
  await expect(page.getByRole('row', { name: /^Sodium phytate 50 %, 1 in 10.* 10\.00 / })).toBeVisible()
  await openBatch(page)
  await weighByPad(page, '339.85')
  await takeStep(page, 'Water phase', 'Make the pre-mix')
  const words = '2.00 g Sodium phytate 50 % and 18.00 g Water, purified. Stir until it is even.'
  await expect(page.getByRole('main').getByText(words).last()).toBeVisible()
  await page.getByRole('button', { name: 'Done', exact: true }).tap()
  await takeStep(page, 'Water phase', 'Sodium phytate 50 %, 1 in 10')
  await weighByPad(page, '10.00')
  await expect(rung(page, 'Sodium phytate 50 %, 1 in 10')).toContainText('10.00')
})
