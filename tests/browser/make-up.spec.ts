/** The end of a batch: what is gone is made up, what was put in is found again, and what is missing is asked about. */
import { openTestBench, type TestBench } from '../support/batch'
import { lotionHeader } from '../support/formulas'
import { runUpTo } from '../support/run'
import { expect, setOutBench, test } from './support/bench.ts'
import { bringIn } from './support/bring-in.ts'
import * as run from './support/run.ts'

test('[B34] a batch is made up by its gross reading, filled by the vessel, and what is unexplained is asked about', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await bringIn(page, madeUpTo('make-up'))
  await page.goto('./#/run/one')
  await expect(run.stepInHand(page)).toHaveText('Make up to weight')
  const card = page.locator('[data-place="run"]')
  await expect(card).toContainText('By the books 792.46 g with its tare of 312.46 g')

  await run.field(page, 'Main beaker, gross').fill('797.46')
  await expect(card).toContainText('5.00 g more than the books know of')
  await run.press(page, 'Weigh the tare again')
  const tare = page.getByRole('dialog', { name: 'Main beaker: its tare' })
  await tare.getByLabel('Empty, with what stands in it').fill('312..5')
  await expect(tare).toContainText('more than one decimal mark')
  await page.keyboard.press('Escape')
  await run.press(page, 'Write down what went in')
  await expect(page.getByLabel('How much')).toHaveValue('5.00')
  await page.keyboard.press('Escape')

  await run.field(page, 'Main beaker, gross').fill('785.21')
  await expect(card).toContainText('7.25 g has gone as water, purified. 17.50 g was held back.')
  await expect(card).toContainText('Read the pH again after this')
  await expect(card).toContainText('It should read 812.46 g once that is in')
  await expect(card.getByRole('row', { name: /^Propanediol 4.23 → 4.00 3.80–4.20/ })).toBeVisible()
  await run.enter(page, 'Water, purified put in', '27.25', /^Record 27.25 g/)

  await run.field(page, 'Sample at').fill('25')
  await run.enter(page, 'pH after make-up', '5.12', 'Record 5.12')
  await run.press(page, 'Record 3 jars, 90.00 g')
  await run.field(page, 'In all').fill('400')
  await run.field(page, 'Vessel before').fill('315.06')
  await run.field(page, 'Vessel after').fill('722.46')
  await run.press(page, 'Record 4 units')
  await expect(card).toContainText('it should be lighter. Check which reading came first')
  await run.field(page, 'Vessel before').fill('722.46')
  await run.field(page, 'Vessel after').fill('315.06')
  await expect(card).toContainText('407.40 g left the vessel, 7.40 g more than the units hold.')
  await expect(card).toContainText('2.60 g stays in it; 7.40 g is unexplained.')
  await run.press(page, 'Record 4 units')
  await expect(run.stepInHand(page)).toHaveText('Clean')

  await run.press(page, 'More')
  await run.press(page, 'Close the batch')
  const close = page.getByRole('dialog', { name: 'Close the batch' })
  await expect(close).toContainText('7.40 g is unexplained')
  await expect(close.getByRole('img', { name: picture })).toBeVisible()
  await close.getByRole('radio', { name: /^Accept/ }).check()
  await expect(close.getByRole('button', { name: /^Close the batch/ })).toBeDisabled()
  await close.getByLabel('Why it is closed so').fill('it stuck to the stirrer')
  await close.getByRole('button', { name: /^Close the batch/ }).click()

  await page.goto('./#/records')
  await expect(page.getByRole('link', { name: /QW-LOT-01-041/ })).toContainText('1.5 % unexplained')
  await page.getByRole('link', { name: /QW-LOT-01-041/ }).click()
  await expect(page.getByRole('img', { name: picture })).toBeVisible()
  await expect(page.locator('.paper')).toContainText('1.48 % of the batch is unexplained')
})

test('[B35] on a phone number, horn, pad and Record stand together, and a closed step names all that is in its way', async ({
  page,
  context,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await setOutBench(page, context)
  await bringIn(page, madeUpTo('a-gum'))
  // What comes next is named on the bench, until another step was in hand: the button leads where it says.
  const batch = page.locator('.batch', { hasText: 'Lotion 041' })
  for (const [step, words, title] of [
    ['', 'Weigh sclerotium gum', 'Sclerotium gum'],
    ['/b-squalane', 'Weigh squalane', 'Squalane'],
    ['/a-gum', 'Weigh sclerotium gum', 'Sclerotium gum'],
  ] as const) {
    if (step !== '') {
      await page.goto(`./#/run/one${step}`)
      await expect(run.stepInHand(page)).toHaveText(title)
    }
    await page.goto('./#/bench')
    await expect(batch).toContainText(words)
    await page.getByRole('button', { name: 'Go on: Lotion 041' }).click()
    await expect(run.stepInHand(page)).toHaveText(title)
  }

  await run.tapNumber(page, '1.8')
  const bottomOf = async (part: string): Promise<number> => {
    const box = await page.locator(part).boundingBox()
    return box === null ? Number.POSITIVE_INFINITY : box.y + box.height
  }
  const pad = (await page.locator('.pad').boundingBox())?.y ?? 0
  expect(await bottomOf('.hero')).toBeLessThan(pad)
  expect(await bottomOf('.horn')).toBeLessThan(pad)
  expect(await bottomOf('.record')).toBeLessThanOrEqual(844)
  await page.keyboard.press('Escape')
  await run.tapNumber(page, '3')
  await expect(page.getByText(/^Cheapest way out/).first()).toBeVisible()
  expect(await bottomOf('.horn')).toBeLessThan(pad)
  const caution = page.locator('details.caution')
  const closedPx = (await caution.boundingBox())?.height ?? 0
  await caution.locator('summary').tap()
  await expect.poll(async () => (await caution.boundingBox())?.height ?? 0).toBeGreaterThan(closedPx + 10)

  await page.goto('./#/run/one/c-in')
  await expect(page.locator('.bar-gate')).toContainText(/^First: .*Also: C cup is empty/)
  await page.goto('./#/materials/nothing-of-that')
  await expect(page.getByRole('heading', { name: 'This material is not here' })).toBeVisible()
})

const picture =
  'From theoretical to filled: Theoretical 500.00 g, More put in +7.25 g, Evaporated −7.25 g, Sampled −90.00 g, Left in vessels −2.60 g, Unexplained −7.40 g, Filled 400.00 g.'

/** A lotion of 500 g that was opened early that morning, everything done up to a step. */
function madeUpTo(step: string): TestBench {
  const bench = openTestBench(lotionHeader())
  runUpTo(bench, step)
  return bench
}
