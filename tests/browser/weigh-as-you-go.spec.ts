import type { Page } from '@playwright/test'
import { expect, passes, setOutBench, test } from './support/bench.ts'
import * as run from './support/run.ts'
import { chooseFormula, inSheet, openBatch } from './support/start.ts'

test.setTimeout(120_000)

test('[B1] formula 1 is made from start to record, weighing as one goes, without a network', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await test.step('set up', () => setUp(page))
  await test.step('water phase', () => weighWater(page))
  await test.step('slurry and hydration', () => hydrate(page))
  await test.step('oil phase while the gum hydrates', () => weighOil(page))
  await test.step('heat, combine, homogenise', () => combine(page))
  await test.step('cool, and what goes in cold', () => coolDown(page))
  await test.step('pH, make-up, samples, packs', () => finish(page))
  await test.step('the next day', () => nextDay(page))
  await test.step('the record', () => readRecord(page))
})

async function setUp(page: Page): Promise<void> {
  await chooseFormula(page, 'Oat barrier body lotion')
  await expect(page.getByRole('button', { name: /Open the batch/ })).toContainText('3 things to settle first')
  await page.getByRole('button', { name: 'Add SG-221' }).click()
  await page.getByRole('button', { name: 'Use TO-038' }).click()
  await page.getByRole('button', { name: /^Use Balance 1/ }).click()
  await inSheet(page, /Vessels, tare/, async () => {
    const main = page.getByRole('group', { name: /^Main beaker/ })
    await main.getByLabel('What stands in it').fill('propeller')
    await main.getByLabel('Tare').fill('365.20')
  })
  await inSheet(page, 'RK weighs', async () => {
    await page.getByLabel('Checks').selectOption({ label: 'MO, Milo Ormerand' })
  })
  await inSheet(page, /^Checks before the batch/, async () => {
    await page.getByRole('switch', { name: 'Bench and vessels clean, labelled, dry' }).check()
    const balance = page.getByRole('group', { name: /^Balance 2/ })
    await balance.getByLabel('Reference mass').fill('200')
    await balance.getByLabel('It shows').fill('200.01')
    await page.getByLabel('Slope').fill('98.6')
    await page.getByRole('textbox', { name: 'Buffers' }).fill('4.01 7.00')
    await page.getByRole('radio', { name: 'Heard it' }).check()
  })
  await openBatch(page)
}

async function weighWater(page: Page): Promise<void> {
  await expect(run.stepInHand(page)).toHaveText('Water, purified')
  // The dispenser is full at 200: the rest is weighed after it.
  await run.tapNumber(page, '200')
  await expect(run.recordButton(page)).toContainText('short by 148.85 g')
  await run.recordButton(page).tap()
  await expect(run.inSoFar(page)).toContainText('200.00 of 500.00 g')
  await run.weighByPad(page, '148.85')
  await expect(run.stepInHand(page)).toHaveText('Sodium phytate 50 %')
  await expect(run.inSoFar(page)).toContainText('348.85 of 500.00 g')

  // A drop too many, in the vessel: everything else is made larger.
  await run.weighByKeys(page, '1.040')
  const ways = page.getByRole('region', { name: 'Ways on' })
  await ways.getByRole('button', { name: /Scale the rest to 520.00 g/ }).click()
  await run.press(page, /Make 520.00 g/)
  await expect(run.inSoFar(page)).toContainText('of 520.00 g')

  await expect(page.locator('.strip')).toContainText('520.00 g, was 500.00')

  await expect(run.stepInHand(page)).toHaveText('Propanediol')
  await page.getByRole('button', { name: 'By difference' }).click()
  await run.field(page, 'Container before').fill('250.30')
  await run.field(page, 'Container after').fill('229.50')
  await run.recordButton(page).click()

  await expect(run.stepInHand(page)).toHaveText('Sclerotium gum')
  await expect(page.locator('[data-place="run"]')).toContainText('Target 2.080 g')
  await run.weighByPad(page, '20.80')
  await run.press(page, 'Mistyped? Strike out, type again')
  await run.weighByPad(page, '2.080')
}

async function hydrate(page: Page): Promise<void> {
  await run.takeStep(page, 'Water phase', 'Stir the slurry in')
  await run.field(page, 'Left in it').fill('0.15')
  await run.field(page, 'Rinsed with water').fill('4')
  await run.press(page, /Slurry cup is in: record/)
  await expect(run.stepInHand(page)).toHaveText('Hydrate the gum')
  await run.startClock(page, /^Start 20 min/)
}

async function weighOil(page: Page): Promise<void> {
  await run.press(page, /^Meanwhile/)
  await expect(run.stepInHand(page)).toHaveText('Caprylic/capric triglyceride')
  await run.weighByKeys(page, '36.4')
  await run.weighByKeys(page, '16.2')
  const ways = page.getByRole('region', { name: 'Ways on' })
  await ways.getByRole('button', { name: /Accept as it is/ }).click()
  await run.press(page, 'trial batch')
  await run.press(page, /^Accept 16.200 g/)
  await run.weighByPad(page, '10.4')
  await run.weighByPad(page, '18.2')
  await run.weighByPad(page, '13')
  await run.press(page, 'Add something not in the plan')
  await page.getByLabel('Its name').fill('Oat starch')
  await page.getByLabel('How much').fill('0.6')
  await run.press(page, 'to see what it does')
  await run.press(page, /^Record it/)
}

async function combine(page: Page): Promise<void> {
  await run.takeStep(page, 'Oil phase', 'Melt B')
  await run.readTemperature(page, '66.2')
  await run.readTemperature(page, '75.4')
  await run.press(page, 'At 75 °C: done')

  await passes(page, '20:30')
  await page.getByRole('button', { name: /^Hydrate the gum Stop/ }).click()
  await run.takeStep(page, 'Water phase', 'Hydrate the gum')
  await run.press(page, 'smooth, no lumps')
  await run.press(page, 'Hydrate the gum: done')
  await run.weighByPad(page, '5.2')
  await expect(run.stepInHand(page)).toHaveText('Heat A, covered')
  await run.enter(page, 'Thermometer', '167.54 °F', 'Record 75.3 °C')
  await run.startClock(page, /hold 10 min/)
  await passes(page, '10:05')
  await run.press(page, 'Held 10 min: done')

  await run.takeStep(page, 'Oil phase', 'B into A')
  await run.field(page, 'Main beaker').fill('75.6')
  await run.enter(page, 'Oil beaker', '74.9', /^Record 75.6 °C and 74.9 °C/)
  await run.field(page, 'Left in it').fill('0.52')
  await run.press(page, /^Oil beaker is in: record/)
  await run.startClock(page, /^Start 3 min/)
  await passes(page, '03:01')
  await run.field(page, 'Speed as set').fill('4000')
  await run.press(page, 'Homogenise: done')
}

async function coolDown(page: Page): Promise<void> {
  await expect(run.stepInHand(page)).toHaveText('Cool, stirring')
  await run.readTemperature(page, '52')
  await run.takeStep(page, 'Cool-down', 'Panthenol 75 %')
  await run.weighByPad(page, '6.916')
  await run.press(page, /^MO$/)
  await run.weighByPad(page, '5.2')
  await run.weighByPad(page, '1.56')
  await run.takeStep(page, 'Cool-down', 'C in, below 40 °C')
  const card = page.locator('[data-place="run"]')
  await expect(card).toContainText('First: Cool, stirring')
  await run.press(page, 'Go on, say why')
  await run.press(page, 'order does not matter here')
  await run.press(page, /^Go on/)
  await expect(card).toContainText('Panthenol 75 % goes in below 40 °C')
  await expect(card).toContainText('Last reading 52 °C, just now')
  await expect(page.getByRole('button', { name: /^C cup is in/ })).toBeDisabled()
  await run.takeStep(page, 'Cool-down', 'Cool, stirring')
  await passes(page, '15:00')
  await run.readTemperature(page, '38.6')
  await run.press(page, 'At 40 °C: done')
  await run.takeStep(page, 'Cool-down', 'C in, below 40 °C')
  await run.field(page, 'Rinsed with water').fill('2')
  await run.press(page, /^C cup is in: record/)
  await run.startClock(page, /^Start 5 min/)
  await passes(page, '05:01')
  await run.field(page, 'Speed as set').fill('200')
  await run.press(page, 'Stir C in: done')
}

async function finish(page: Page): Promise<void> {
  await expect(run.stepInHand(page)).toHaveText('Bring the pH to 4.9–5.3')
  for (const [value, portion] of [
    ['6.2', '0.8'],
    ['5.7', '0.85'],
  ] as const) {
    await run.enter(page, 'pH', value, `Record pH ${value}`)
    await run.press(page, /^Another amount/)
    await run.enter(page, 'Portion', portion, /^Record 0.8/)
  }
  await run.enter(page, 'pH', '5.15', 'Record pH 5.15')
  await run.press(page, 'In the window: done')
  await expect(run.stepInHand(page)).toHaveText('Make up to weight')
  const card = page.locator('[data-place="run"]')
  await expect(card).toContainText('By the books 858.63 g with its tare of 365.20 g')
  await run.field(page, 'Main beaker, gross').fill('852.63')
  await expect(card).toContainText('6.00 g has gone as water, purified')
  await expect(page.getByRole('button', { name: /^Weigh in 32.50 g/ })).toBeDisabled()
  await run.enter(page, 'Water, purified put in', '32.5', /^Record 32.50 g/)
  await expect(run.stepInHand(page)).toHaveText('pH after make-up')
  await run.field(page, 'Sample at').fill('25')
  await run.field(page, 'Taken out').fill('2')
  await run.enter(page, 'pH after make-up', '5.12', 'Record 5.12')
  await expect(run.stepInHand(page)).toHaveText('Sample')
  await run.press(page, 'Record 3 jars, 90.00 g')
  await expect(run.stepInHand(page)).toHaveText('Fill')
  await run.field(page, 'Units').fill('4')
  await run.enter(page, 'In all', '425.5', 'Record 4 units, 425.50 g')
  await run.press(page, 'Clean: done')
}

async function nextDay(page: Page): Promise<void> {
  await expect(run.stepInHand(page)).toHaveText('Rest the sample jars')
  await run.startClock(page, /^Start 24 h/)
  await passes(page, '24:00:10')
  await run.press(page, 'unchanged')
  await run.press(page, 'Rest the sample jars: done')
  await run.enter(page, 'pH, rested', '5.08', 'Record 5.08')
  await run.enter(page, 'Viscosity, rested', '11200', 'Record 11200 mPa·s')
  await page.getByRole('radio', { name: 'As expected', exact: true }).check()
  await run.press(page, 'Record appearance')
  await expect(run.stepInHand(page)).toHaveText('Every step is done')
  await run.press(page, 'Close the batch')
  await page.getByRole('radio', { name: /^Accept/ }).check()
  await run.press(page, 'Close the batch')
  await expect(run.stepInHand(page)).toHaveText('This batch is closed')
}

async function readRecord(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Read the record' }).click()
  const paper = page.getByRole('article')
  const line = (name: string) => paper.locator('.paper-materials').getByRole('row').filter({ hasText: name })
  await expect(paper).toContainText('520.60 g, was 500.00 g, then 520.00 g')
  await expect(paper).toContainText('200.00 g read 200.01 g')
  await expect(paper).toContainText('Main beaker tare 365.20 with propeller')
  // Finished water: 387.35 g in four ways less 5.996 g evaporated, of the 519.93 g that were not left behind.
  await expect(line('Water, purified')).toContainText('200.00 + 148.85')
  await expect(line('Water, purified')).toContainText('73.34')
  await expect(line('Sclerotium gum')).toContainText('20.800 struck')
  await expect(line('Panthenol 75 %')).toContainText('6.916 was 6.650')
  await expect(line('Phenoxyethanol + EHG')).toContainText('RK MO')
  await expect(line('Oat starch')).toContainText('Not in the plan: to see what it does')
  await expect(line('Put in, with rinses and make-up')).toContainText('526.596')
  await expect(paper).toContainText('scale the rest, 520.00 g in all')
  await expect(paper).toContainText('accept it as it is, 520.60 g in all')
  await expect(paper).toContainText('Went on all the same')
  await expect(paper).toContainText('74.9 into 75.6 °C, left 0.52 g')
  await expect(paper).toContainText('Every hash fits the entry and the one before it')
  await expect(paper.getByRole('row').filter({ hasText: /^Viscosity, rested.*11,200/ })).toContainText('within')
  await expect(paper).toContainText('Not read yet: Odour.')
}
