import type { Page } from '@playwright/test'
import { expect, passes, setOutBench, test } from './support/bench.ts'
import * as run from './support/run.ts'
import { chooseFormula, inSheet, openBatch, settleLotion } from './support/start.ts'

test.setTimeout(120_000)

test('[B2] every line is weighed into a labelled cup first, and the cups are tipped in where they belong', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await chooseFormula(page, 'Oat barrier body lotion')
  await settleLotion(page)
  await page.getByRole('radio', { name: 'Weigh up first' }).check()
  await inSheet(page, 'RK weighs', async () => {
    await page.getByLabel('Checks').selectOption({ label: 'MO, Milo Ormerand' })
  })
  await openBatch(page)
  await test.step('weigh up', () => weighUp(page))
  await test.step('water phase', () => tipInWater(page))
  await test.step('oil phase', () => tipInOil(page))
  await test.step('cool-down', () => tipInCold(page))
  // 348.85 g of water and every other target, 0.01 g of gum too many, with 4 g and 2 g of rinse.
  await expect(run.inSoFar(page)).toContainText('486.01 of 500.00 g')
})

async function weighUp(page: Page): Promise<void> {
  const card = page.locator('[data-place="run"]')
  const shelf = page.getByRole('list', { name: 'Vessels' })
  await run.weighByPad(page, '348.85')
  await expect(run.stepInHand(page)).toHaveText('Sodium phytate 50 %')
  await expect(shelf).toContainText('Cup 1')
  await run.weighByPad(page, '1')
  await run.weighByPad(page, '20')

  // Over in a cup of its own: some of it comes out again.
  await run.weighByKeys(page, '2.30')
  await expect(card).toContainText('It is still in the cup')
  await run.enter(page, 'Reads now', '2.01', /^Record 0.290 g taken out/)
  await run.weighByPad(page, '5')
  await run.weighByPad(page, '35')

  // Far over: the cup is thrown away and weighed again.
  await run.weighByKeys(page, '51')
  await page
    .getByRole('region', { name: 'Ways on' })
    .getByRole('button', { name: /Discard, weigh again/ })
    .click()
  await run.press(page, 'weighed far over')
  await run.press(page, /^Discard the cup/)
  await expect(run.recordButton(page)).toContainText('type what the balance shows')
  await run.weighByPad(page, '15')
  for (const mass of ['10', '17.5', '12.5', '6.65']) await run.weighByPad(page, mass)

  await expect(run.stepInHand(page)).toHaveText('Phenoxyethanol + EHG')
  await run.tapNumber(page, '5')
  await run.recordButton(page).tap()
  await expect(card).toContainText('checked by a second person')
  await run.press(page, /^MO$/)
  await run.recordButton(page).tap()
  await expect(run.stepInHand(page)).toHaveText('Tocopherol')
  await run.weighByPad(page, '1.5')
  await expect(page.getByRole('button', { name: /^Cups waiting/ })).toContainText('cups are weighed')
}

async function tipInWater(page: Page): Promise<void> {
  await run.takeStep(page, 'Water phase', 'Tip in sodium phytate 50 %')
  await run.press(page, /is in: record/)
  await run.takeStep(page, 'Water phase', 'Tip in sclerotium gum')
  await run.press(page, /is in: record/)
  await run.takeStep(page, 'Water phase', 'Stir the slurry in')
  await run.field(page, 'Rinsed with water').fill('4')
  await run.press(page, /is in: record/)
  await run.startClock(page, /^Start 20 min/)
  await passes(page, '20:01')
  await run.press(page, 'Hydrate the gum: done')
  await run.takeStep(page, 'Water phase', 'Tip in colloidal oat')
  await run.press(page, /is in: record/)
  await expect(run.stepInHand(page)).toHaveText('Heat A, covered')
  await run.enter(page, 'Thermometer', '75', 'Record 75 °C')
  await run.startClock(page, /hold 10 min/)
  await passes(page, '10:01')
  await run.press(page, 'Held 10 min: done')
}

async function tipInOil(page: Page): Promise<void> {
  for (const name of ['squalane', 'shea butter', 'emulsifier, GS + PEG-100', 'cetearyl alcohol']) {
    await run.takeStep(page, 'Oil phase', `Tip in ${name}`)
    await run.press(page, /is in: record/)
  }
  await run.takeStep(page, 'Oil phase', 'Melt B')
  await run.enter(page, 'Thermometer', '75.5', 'Record 75.5 °C')
  await run.press(page, 'At 75 °C: done')
  await run.takeStep(page, 'Oil phase', 'B into A')
  await run.enter(page, 'Main beaker', '75.2', /^Record 75.2 °C/)
  await run.press(page, /^Oil beaker is in: record/)
  await run.startClock(page, /^Start 3 min/)
  await passes(page, '03:01')
  await run.press(page, 'Homogenise: done')
}

async function tipInCold(page: Page): Promise<void> {
  await run.enter(page, 'Thermometer', '39', 'Record 39 °C')
  await run.press(page, 'At 40 °C: done')
  for (const name of ['phenoxyethanol + EHG', 'tocopherol']) {
    await run.takeStep(page, 'Cool-down', `Tip in ${name}`)
    await run.press(page, /is in: record/)
  }
  await run.takeStep(page, 'Cool-down', 'C in, below 40 °C')
  await run.field(page, 'Rinsed with water').fill('2')
  await run.press(page, /is in: record/)
  await expect(run.stepInHand(page)).toHaveText('Stir C in')
}
