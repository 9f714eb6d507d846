/** Bringing a batch to its pH and its viscosity, from what is read to what goes in. */
import { batchAt, bringBatch } from './support/batch-at.ts'
import { expect, setOutBench, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B32] the pH is brought into its window by what the card proposes, and a slip of the finger is one tap', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await bringBatch(page, batchAt('lotion', 'adjust-ph'))
  await page.goto('./#/run/one/adjust-ph')
  const card = page.locator('[data-place="run"]')

  await run.field(page, 'pH').fill('71')
  await expect(page.getByRole('button', { name: /^Record/ })).toBeDisabled()
  await page.getByRole('button', { name: /^7.1\?/ }).tap()
  await expect(run.field(page, 'pH')).toHaveValue('7.1')

  await run.field(page, 'Sample at').fill('34')
  await expect(card).toContainText('cool the sample first')
  await run.field(page, 'Sample at').fill('25')
  await run.field(page, 'Taken out').fill('5')
  await run.enter(page, 'pH', '6.31', 'Record pH 6.31')
  await expect(card).toContainText('pH 6.31 now. Add')
  await expect(card.getByRole('img', { name: 'pH against grams of Lactic acid 10 %' })).toBeVisible()
  await run.press(page, /^Weigh 0.800/)
  await expect(card).toContainText('never the product into the acid')
  await run.field(page, 'Portion').fill('2')
  await expect(card).toContainText('more than the 0.800 g proposed')
  await run.enter(page, 'Portion', '0.79', 'Record 0.790 g')

  await run.enter(page, 'pH', '6.6', 'Record pH 6.6')
  await expect(card).toContainText('the meter has not settled')
  await run.press(page, 'Read pH again')
  await run.enter(page, 'pH', '5.62', 'Record pH 5.62')
  await run.press(page, 'Read pH again')
  await run.enter(page, 'pH', '5.61', 'Record pH 5.61')
  await expect(card).toContainText(/Lotion 0\d\d shows how this formula takes it/)
  const proposed = await page.getByRole('button', { name: /^Weigh 0/ }).textContent()
  const portion = /0\.\d+/.exec(proposed ?? '')?.[0] ?? ''
  await run.press(page, /^Weigh 0/)
  await run.enter(page, 'Portion', portion, /^Record 0/)
  await run.enter(page, 'pH', '5.12', 'Record pH 5.12')
  await expect(card).toContainText(/less than expected: make-up puts water in its place/)
  await run.press(page, 'In the window: done')
  await expect(run.stepInHand(page)).toHaveText('Make up to weight')
  await expect(run.rung(page, 'pH after make-up')).toBeVisible()
})

test('[B33] salt goes in by hand, and the portion that thins it is told', async ({ page, context }) => {
  await setOutBench(page, context)
  await bringBatch(page, batchAt('shampoo', 'adjust-viscosity'))
  await page.goto('./#/run/one/adjust-viscosity')
  const card = page.locator('[data-place="run"]')
  await expect(card).toContainText('spindle 3, 12 rpm, 25 °C')
  await run.field(page, 'Spindle').fill('3')
  await run.field(page, 'Speed').fill('12')
  for (const [value, portion] of [
    ['900', '1.5'],
    ['1800', '1.4'],
  ] as const) {
    await run.field(page, 'Sample at').fill('25')
    await run.enter(page, 'Viscosity', value, `Record ${value} mPa·s`)
    await run.press(page, 'Weigh a portion')
    await run.enter(page, 'Portion', portion, /^Record 1/)
    await expect(card).toContainText('let the air out')
  }
  await run.enter(page, 'Viscosity', '1500', 'Record 1500 mPa·s')
  await expect(card).toContainText('The last portion lowered it.')
  await expect(card).toContainText('2.900 g in so far')
  await expect(card.getByRole('img', { name: 'Viscosity against grams of Sodium chloride' })).toBeVisible()
})
