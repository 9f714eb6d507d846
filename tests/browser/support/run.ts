/** What a person does in a run, by what the screen calls it. */
import { expect, type Locator, type Page } from '@playwright/test'

/** The number in hand. */
export const reading = (page: Page): Locator => page.locator('input[name="reading"]')

/** The one thing to press for a weighing. */
export const recordButton = (page: Page): Locator => page.locator('[data-action="record"]')

/** The name of the step in hand. */
export const stepInHand = (page: Page): Locator => page.getByRole('heading', { level: 1 })

/** How much is in, of how much: "331.22 of 500.00 g". */
export const inSoFar = (page: Page): Locator => page.locator('.ladder-foot .meter')

/** A step of the ladder, by its name. */
export const rung = (page: Page, title: string): Locator =>
  page.getByRole('navigation', { name: 'Steps of the batch' }).getByRole('listitem').filter({ hasText: title })

/** Takes a step in hand from the ladder, opening its phase first where that is folded. */
export const takeStep = async (page: Page, phase: string, title: string): Promise<void> => {
  const head = page.getByRole('navigation', { name: 'Steps of the batch' }).getByRole('button', { name: phase })
  const step = rung(page, title).first().getByRole('button')
  // What was recorded just before may still be moving on to the next phase, which folds this one.
  await expect(async () => {
    if (!(await step.isVisible())) await head.click()
    await step.click({ timeout: 500 })
    await expect(stepInHand(page)).toHaveText(title, { timeout: 500 })
  }).toPass()
}

/** Taps a number on our own pad. */
export const tapNumber = async (page: Page, number: string): Promise<void> => {
  const pad = page.getByRole('group', { name: 'Number pad' })
  for (const sign of number)
    await pad.getByRole('button', { name: sign === '.' ? 'point' : sign === ',' ? 'comma' : sign, exact: true }).tap()
}

/** Weighs on the pad: taps what the balance shows, and Record. */
export const weighByPad = async (page: Page, number: string): Promise<void> => {
  await tapNumber(page, number)
  await recordButton(page).tap()
  await taken(reading(page))
}

/** Weighs by keyboard or wedge: digits and Enter, no field touched. */
export const weighByKeys = async (page: Page, number: string): Promise<void> => {
  await typeKeys(page, number)
  await page.keyboard.press('Enter')
  await taken(reading(page))
}

/** Types what the balance shows, and leaves it at that. */
export const typeKeys = async (page: Page, number: string): Promise<void> => {
  await reading(page).waitFor()
  await painted(page)
  await page.keyboard.type(number)
  await expect(reading(page)).toHaveValue(number)
}

/** What hears the keyboard is fetched behind the first card of a start; no hand is faster. */
const painted = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let frames = 0; frames < 3; frames++) await new Promise((next) => requestAnimationFrame(next))
  })

/** Whoever works looks up before the next number: what was typed has been taken off its field. */
const taken = (typed: Locator): Promise<void> =>
  expect
    .poll(() => typed.evaluateAll((fields) => fields.map((each) => (each as HTMLInputElement).value).join()))
    .toBe('')

/** Types a figure into a field of the card, and presses the button that then offers to record it. */
export const enter = async (page: Page, label: string, figure: string, button: string | RegExp): Promise<void> => {
  await field(page, label).fill(figure)
  await press(page, button)
  await taken(field(page, label))
}

/** A field of the card in hand, by its label. */
export const field = (page: Page, label: string): Locator =>
  page.locator('[data-place="run"]').getByRole('textbox', { name: label, exact: true })

/** Presses a button of the card in hand or of the sheet over it. */
export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).last().click()

/** Types what the thermometer shows, asking for the pad where the curve stands in its place. */
export const readTemperature = async (page: Page, celsius: string): Promise<void> => {
  const ask = page.getByRole('button', { name: /^Type a reading/ })
  await expect(ask.or(field(page, 'Thermometer')).first()).toBeVisible()
  if (await ask.isVisible()) await ask.click()
  await enter(page, 'Thermometer', celsius, `Record ${celsius} °C`)
}

/** Starts the clock of the step in hand, and waits until it runs. */
export const startClock = async (page: Page, button: string | RegExp): Promise<void> => {
  await press(page, button)
  await page.getByRole('button', { name: /^\d\S* to (go|hold)/ }).waitFor()
}
