/** From an empty tablet to a weighed line, in plain forms and with a decimal comma. */
import type { Locator, Page } from '@playwright/test'
import { openApp } from './support/app.ts'
import { expect, openAgain, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'
import { inSheet, openBatch } from './support/start.ts'

test.describe('where numbers have a comma', () => {
  test.use({ locale: 'de-DE' })

  test('[B13] an empty start leads through plain forms to a batch whose first line is weighed', async ({
    page,
    context,
  }) => {
    await openApp(page)
    await context.setOffline(true)
    await page.getByRole('link', { name: /^Start empty/ }).click()
    await test.step('a person, a balance, a vessel', () => house(page))
    await test.step('two materials', () => materials(page))
    await test.step('a formula', () => formula(page))
    await test.step('a batch', () => batch(page))
    await test.step('its first lines', () => weigh(page))
  })
})

test('[B14] theme, hand and decimal mark are chosen in Setup and stay', async ({ page, context }) => {
  await setOutBench(page, context)
  const light = await ground(page)
  await page.goto('./#/setup/preferences')
  await page.getByRole('radio', { name: 'dark' }).check()
  await page.getByRole('radio', { name: /^left/ }).check()
  await page.getByRole('radio', { name: /^comma/ }).check()
  const dark = await ground(page)
  expect(dark).not.toBe(light)
  await openAgain(page)
  for (const choice of ['dark', /^left/, /^comma/])
    await expect(page.getByRole('radio', { name: choice })).toBeChecked()
  expect(await ground(page)).toBe(dark)

  await page.goto('./#/bench')
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  const [record, ladder] = await Promise.all([
    run.recordButton(page).boundingBox(),
    page.getByRole('navigation', { name: 'Steps of the batch' }).boundingBox(),
  ])
  expect(record?.x, 'Record lies under the left hand').toBeLessThan(ladder?.x ?? 0)
  await run.weighByPad(page, '3,5')
  await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('3,500 g of 12,500')
})

async function house(page: Page): Promise<void> {
  await page.goto('./#/setup/people')
  await fillIn(page, 'Add a person', { Initials: 'AB', Name: 'Anka Brook' })
  await expect(page.getByRole('main')).toContainText('Anka Brook (AB) is at this tablet')
  await page.goto('./#/setup/balances')
  await fillIn(page, 'Add a balance', {
    Name: 'Bench balance',
    'Readability d': '0,01',
    Capacity: '2,2 kg',
    'Repeatability s': '0,01',
  })
  await expect(page.getByRole('main')).toContainText('0,01 g to 2200,00 g')
  await page.goto('./#/setup/vessels')
  await fillIn(page, 'Add a vessel', {
    Name: 'Glass beaker',
    'Empty, with what stays in it (optional)': '112,4',
    'Holds at most': '600',
  })
  await expect(page.getByRole('main')).toContainText('112,40 g empty')
}

async function materials(page: Page): Promise<void> {
  for (const [name, job, inci, lot] of [
    ['Water', 'solvent', 'Aqua', 'W-1'],
    ['Glycerine', 'humectant', 'Glycerin', 'G-1'],
  ] as const) {
    await page.goto('./#/materials')
    await fillIn(page, 'New material', { 'Bench name': name, 'What it does': job, [inciLabel]: inci })
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(name)
    await fillIn(page, 'Add a lot', { 'Lot code': lot, Received: '2,5 kg' })
    await expect(page.getByRole('region', { name: `Lot ${lot}` })).toContainText('2500,00 g on hand')
  }
}

const inciLabel = 'INCI names, one a line, each with its percentage'

async function formula(page: Page): Promise<void> {
  await page.goto('./#/formulas')
  await page.getByRole('button', { name: 'New formula' }).click()
  await page.getByRole('region', { name: 'The formula' }).getByRole('textbox', { name: 'Name' }).fill('Plain toner')
  await field(page, 'Code').fill('PT-1')
  await field(page, 'What its batches are called').fill('Toner')
  await field(page, 'Usual batch').fill('250')
  const lines = page.getByRole('list', { name: 'Lines of Phase A' }).getByRole('listitem')
  await page.getByRole('button', { name: 'Add a line to Phase A' }).click()
  await lines.nth(0).getByRole('combobox', { name: 'Material' }).selectOption({ label: 'Water' })
  await page.getByRole('button', { name: 'Add a line to Phase A' }).click()
  await lines.nth(1).getByRole('combobox', { name: 'Material' }).selectOption({ label: 'Glycerine' })
  await lines.nth(1).getByRole('textbox', { name: 'Share of the batch' }).fill('5,5')
  await expect(page.getByRole('complementary', { name: 'Save' })).toContainText('100,000 %')
  await expect(page.getByRole('list', { name: 'Steps' }).getByRole('listitem')).toHaveCount(2)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Plain toner')
}

async function batch(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Start a batch' }).click()
  await page.getByLabel('Batch size').waitFor()
  await inSheet(page, /Vessels, tare/, async () => {
    await page
      .getByRole('group', { name: /^Main beaker/ })
      .getByLabel('Tare')
      .fill('112,4')
  })
  await openBatch(page)
}

async function weigh(page: Page): Promise<void> {
  const card = page.locator('[data-place="run"]')
  await expect(run.stepInHand(page)).toHaveText('Water')
  await expect(card).toContainText('228,75')
  await run.weighByKeys(page, '228,75')
  await expect(run.stepInHand(page)).toHaveText('Glycerine')
  await expect(card).toContainText('13,75')
  await run.weighByPad(page, '12,5')
  await expect(run.rung(page, 'Glycerine')).toContainText('12,50 g of 13,75')
  await expect(run.inSoFar(page)).toContainText('241,25 of 250,00 g')
}

/** Opens a form by its button, fills it in, and saves it. */
async function fillIn(page: Page, opener: string, texts: Readonly<Record<string, string>>): Promise<void> {
  await page.getByRole('button', { name: opener }).click()
  for (const [label, text] of Object.entries(texts)) await field(page, label).fill(text)
  // A sheet's own comes last: the form under it may have one too.
  await page.getByRole('button', { name: 'Save', exact: true }).last().click()
}

const field = (page: Page, label: string): Locator => page.getByRole('textbox', { name: label, exact: true })

const ground = (page: Page): Promise<string> => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
