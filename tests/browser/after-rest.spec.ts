/** The day after: checks in one pass, a thin batch reworked as a new part of its log, and accepted. */
import type { Locator, Page } from '@playwright/test'
import { expect, passes, setOutBench, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B46] what is due is entered in one pass with every reading, a thin batch is reworked with one step that is over-weighed and settled, and accepted', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.getByRole('link', { name: /Lotion 012: 4 checks/ }).click()
  await page.getByRole('button', { name: 'Enter the 4 checks that are due' }).click()
  const checks = page.getByRole('dialog', { name: 'Checks after the rest' })
  await checks.getByRole('region', { name: 'pH, rested' }).getByLabel('Reading').fill('5,12')
  const viscosity = checks.getByRole('region', { name: 'Viscosity, rested' })
  await readThrice(viscosity, ['7 Pa·s', '7100', '7200'])
  await viscosity.getByLabel('Torque').fill('7')
  await expect(viscosity).toContainText('7,100 mPa·s, s 100, n 3: below its limits')
  await expect(viscosity).toContainText('Torque outside 10–100 %')
  await seeAsStandard(checks)
  await checks.getByRole('button', { name: 'Record 4 checks' }).click()
  const paper = page.locator('.paper')
  await expect(paper).toContainText('3 readings: 7,000; 7,100; 7,200; s 100')
  await expect(paper).toContainText('torque 7 %, outside 10–100 %')

  await page.getByRole('button', { name: 'Decide' }).click()
  const decision = page.getByRole('dialog', { name: 'What becomes of it' })
  await expect(decision).toContainText('Viscosity, rested: 7,100 mPa·s, wanted 8,000–16,000')
  await decision.getByRole('radio', { name: /^Rework/ }).check()
  await decision.getByRole('button', { name: 'Plan the rework' }).click()
  const rework = page.getByRole('dialog', { name: 'Rework 1' })
  await rework.getByRole('button', { name: 'too thin' }).click()
  await rework.getByRole('button', { name: 'Add material' }).click()
  await rework.getByLabel('What', { exact: true }).selectOption('Sclerotium gum')
  await rework.getByRole('button', { name: /^Open it again/ }).click()
  await expect(rework).toContainText('Type a number first')
  await rework.getByLabel('How much').fill('0.5')
  await expect(rework).toContainText('Sclerotium gum 0.52 %, at most 0.42 %')
  await rework.getByRole('button', { name: /^Open it again/ }).click()

  await expect(run.stepInHand(page)).toHaveText('Sclerotium gum')
  await run.weighByKeys(page, '0.61')
  const ways = page.getByRole('region', { name: 'Ways on' })
  await expect(ways).toContainText('Left so, it ends at 0.55 % sclerotium gum; the formula stops at 0.42 %')
  await ways.getByRole('button', { name: /Accept as it is/ }).click()
  await run.press(page, 'trial batch')
  await run.press(page, /^Accept 0.610 g/)
  await expect(run.stepInHand(page)).toHaveText('Every step is done')
  await page.getByRole('button', { name: 'Close the batch' }).click()
  const closing = page.getByRole('dialog', { name: 'Close the batch' })
  await closing.getByRole('radio', { name: /^Hold/ }).check()
  await closing.getByRole('button', { name: /^Close the batch/ }).click()
  await expect(closing).toBeHidden()

  await passes(page, '24:00:00')
  await page.goto('./#/records/01a2075d-8860-7000-8000-00000000000c')
  await page.getByRole('button', { name: 'Enter the 4 checks that are due' }).click()
  await checks.getByRole('region', { name: 'pH, rested' }).getByLabel('Reading').fill('5.1')
  await viscosity.getByLabel('Reading').fill('9400')
  await seeAsStandard(checks)
  await checks.getByRole('button', { name: 'Record 4 checks' }).click()
  await page.getByRole('button', { name: 'Decide' }).click()
  await expect(decision).toContainText('Every check after the rest is within its limits.')
  await decision.getByRole('radio', { name: /^Accept/ }).check()
  await decision.getByRole('button', { name: /^Sign and record/ }).click()
  await expect(decision).toBeHidden()
  await expect(paper.getByRole('heading', { name: 'Rework 1' })).toBeVisible()
  await expect(paper).toContainText('407.02 g emptied back into main beaker')
  await page.goto('./#/records')
  await expect(page.getByRole('link', { name: /QW-LOT-01-012/ })).toContainText(/accepted.*reworked/s)
})

async function readThrice(row: Locator, readings: readonly string[]): Promise<void> {
  for (let more = 1; more < readings.length; more += 1) await row.getByRole('button', { name: 'Read again' }).click()
  for (const [index, reading] of readings.entries()) await row.getByLabel(`Reading ${index + 1}`).fill(reading)
}

async function seeAsStandard(checks: Locator): Promise<void> {
  for (const name of ['Appearance', 'Odour'])
    await checks.getByRole('region', { name }).getByRole('radio', { name: 'As the standard' }).check()
}

test('[B47] three batches are compared, then more; one measure is charted, what goes with it is told, and a revision begun', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await page.goto('./#/formulas/formula-lotion')
  await page.getByRole('link', { name: 'Compare its batches' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Batches side by side')
  const table = page.getByRole('region', { name: 'What differs, batch by batch' })
  await expect(table.getByRole('columnheader')).toHaveCount(14)
  await choose(page, ['001', '002', '003', '004', '005', '006', '007', '010', '012'])
  await expect(table.getByRole('columnheader')).toHaveCount(5)
  await expect(page.getByText('3 batches are too few')).toBeVisible()
  await expect(page.getByRole('img', { name: /^Viscosity, rested, QW-LOT-01-008 11350 mPa·s/ })).toBeVisible()
  await expect(table.getByRole('row', { name: /^Hydrate the gum: time/ })).toContainText('14 min')

  await choose(page, ['001', '002', '003', '004', '005', '006', '007', '010'])
  await expect(page.getByText(/^With 11 batches, two things that have nothing to do/)).toBeVisible()
  await page.getByLabel('Which', { exact: true }).selectOption('pH, rested')
  await expect(page.getByRole('img', { name: /^pH, rested/ })).toBeVisible()
  await expect(page.getByRole('heading', { name: 'What goes with pH, rested?' })).toBeVisible()
  await table.getByRole('link', { name: 'New revision from QW-LOT-01-009' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('QW-LOT-01-009 as it was made')
})

async function choose(page: Page, numbers: readonly string[]): Promise<void> {
  for (const number of numbers) await page.getByRole('button', { name: new RegExp(`^QW-LOT-01-${number}`) }).click()
}
