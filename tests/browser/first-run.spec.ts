import type { Page } from '@playwright/test'
import { goOffline, openApp } from './support/app.ts'
import { expect, test } from './support/bench.ts'
import * as run from './support/run.ts'
import { openBatch } from './support/start.ts'

test('[B17] an empty start leads to a person, a balance, two materials, a formula, and a batch that weighs', async ({
  page,
  context,
}) => {
  await openApp(page)
  await goOffline(context)
  await page.getByRole('link', { name: /Start empty/ }).click()
  await expect(page.getByText('No formula yet')).toBeVisible()

  await page.getByRole('link', { name: 'Setup' }).click()
  await fillSheet(page, 'Add a person', { Initials: 'EW', Name: 'Elin Wray' })
  await page.getByRole('link', { name: 'Balances' }).click()
  await fillSheet(page, 'Add a balance', {
    Name: 'Kitchen-bench balance',
    'Readability d': '0.01',
    Capacity: '2 kg',
    'Repeatability s': '0.01',
  })
  for (const [name, purpose] of [
    ['Water', 'solvent'],
    ['Glycerin', 'humectant'],
  ] as const) {
    await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Materials' }).click()
    await page.getByRole('button', { name: 'New material' }).click()
    await page.getByLabel('Bench name').fill(name)
    await page.getByLabel('What it does').fill(purpose)
    await page.getByLabel(/^INCI names/).fill(name)
    await page.getByRole('button', { name: 'Save' }).click()
    await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
  }

  await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Formulas' }).click()
  await page.getByRole('button', { name: 'New formula' }).click()
  await page.getByLabel('Name', { exact: true }).first().fill('Plain glycerin water')
  await page.getByLabel('Code', { exact: true }).fill('PGW-01')
  await page.getByLabel('What its batches are called').fill('Water')
  await page.getByLabel('Usual batch', { exact: true }).fill('100')
  await addLine(page, 'Water')
  await addLine(page, 'Glycerin', '5')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Plain glycerin water' })).toBeVisible()

  await page
    .getByRole('link', { name: /^Start a batch/ })
    .first()
    .click()
  await openBatch(page)
  await expect(page.locator('[data-place="run"]')).toContainText('g to go')
  await expect(run.stepInHand(page)).toHaveText('Water')
})

async function fillSheet(page: Page, opener: string, fields: Readonly<Record<string, string>>): Promise<void> {
  await page.getByRole('button', { name: opener }).click()
  const sheet = page.getByRole('dialog')
  for (const [label, text] of Object.entries(fields)) await sheet.getByLabel(label, { exact: true }).fill(text)
  await sheet.getByRole('button', { name: 'Save' }).click()
  await expect(sheet).toHaveCount(0)
}

async function addLine(page: Page, material: string, percent?: string): Promise<void> {
  await page.getByRole('button', { name: /^Add a line/ }).click()
  await page
    .getByRole('dialog')
    .getByRole('button', { name: new RegExp(`^${material}`) })
    .click()
  if (percent !== undefined) await page.getByLabel(`Share of the batch: ${material}`).fill(percent)
}
