import { expect, setOutBench, test } from './support/bench.ts'
import { chooseFormula } from './support/start.ts'

test('[B52] a field takes another unit and says what it comes to; a size in millilitres is weighed by the density in the checks', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  const size = page.getByLabel('Batch size')
  const panel = page.getByRole('region', { name: 'Size and vessels' })
  await chooseFormula(page, 'Clear hold hair gel')
  await size.fill('500 mL')
  await expect(panel).toContainText('depends on its density, which this formula states in no check')
  await expect(page.getByRole('button', { name: /Open the batch/ })).toBeDisabled()

  await page.goto('./#/formulas/formula-gel')
  await page.getByRole('button', { name: /^Change/ }).tap()
  await page.getByRole('button', { name: /^4 Hydrate the carbomer/ }).tap()
  const long = page.getByLabel('How long')
  await long.fill('1.5 h')
  await expect(page.getByText('= 90 min', { exact: true })).toBeVisible()
  await page.getByRole('button', { name: 'Add a check' }).tap()
  await expect(page.getByRole('button', { name: /^4 Hydrate the carbomer/ })).toContainText('90 min')
  const check = page.locator('.editor-item-open')
  await check.getByLabel('What is checked').fill('Density')
  await check.getByLabel('Property').selectOption('density')
  await check.getByLabel('When').selectOption('in process')
  await check.getByLabel('At least (optional)').fill('1.01')
  await check.getByLabel('At most (optional)').fill('1.03')
  await check.getByLabel('Unit (optional)').fill('g/mL')
  await page.getByRole('button', { name: 'Save', exact: true }).tap()
  await expect(page.getByText('QW-GEL-03 r3')).toBeVisible()
  await page.goto('./')
  await chooseFormula(page, 'Clear hold hair gel')
  await expect(size).toHaveValue('500 mL')
  await expect(panel).toContainText('= 510.00 g at 1.02 g/mL')
})
