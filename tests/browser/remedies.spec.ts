import type { Page } from '@playwright/test'
import { expect, passes, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'
import { chooseFormula, openBatch, settleLotion } from './support/start.ts'

test.setTimeout(120_000)

test('[R26] an over-weighed emulsifier: a little more is made, the old targets stay legible', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await page.getByRole('button', { name: /Make a little more: 517\.23/ }).click()
  await page.getByRole('button', { name: 'Compare with choice 1' }).click()
  await expect(page.getByRole('table')).toContainText('517.23')
  await page.getByRole('button', { name: 'In full' }).click()
  const proof = page.getByRole('dialog')
  await expect(proof.getByRole('table', { name: /New targets/ })).toContainText('Cetearyl alcohol12.50012.931')
  await expect(proof.getByRole('row', { name: /^Phenoxyethanol 0\.90/ })).toContainText('≤ 1.00, spare')
  await expect(proof).toContainText('its stirrer moves 160.00 g to 720.00 g (spare 202.77)')
  await proof.getByRole('button', { name: 'Close' }).click()
  await page.getByRole('button', { name: /^Why/ }).click()
  await run.press(page, 'poured too fast')
  await run.press(page, /^Make 517\.23/)
  await expect(run.inSoFar(page)).toContainText('of 517.23')
  await expect(run.rung(page, 'Cetearyl alcohol').first()).toContainText('was 12.50')
  await expect(run.stepInHand(page)).toHaveText('Cetearyl alcohol')
  await run.typeKeys(page, '14.5')
  await expect(page.getByText(/^Cheapest way out: .* 574\.25\sg\.$/).first()).toBeVisible()
  await expect(run.inSoFar(page)).toContainText('454.84')
})

test('[R28] a gum forgotten until hydration has passed: no dilution mends it, the vessel is started again', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await chooseFormula(page, 'Oat barrier body lotion')
  await settleLotion(page)
  await openBatch(page)
  await run.weighByKeys(page, '348.85')
  await run.weighByKeys(page, '1.000')
  await run.weighByKeys(page, '20.000')
  await run.takeStep(page, 'Water phase', 'Stir the slurry in')
  await goPast(page)
  await run.press(page, /Slurry cup is in: record/)
  await expect(run.stepInHand(page)).not.toHaveText('Stir the slurry in')
  await run.takeStep(page, 'Water phase', 'Hydrate the gum')
  await run.startClock(page, /^Start 20 min/)
  await passes(page, '20:01')
  await run.press(page, 'Hydrate the gum: done')
  const ways = page.getByRole('region', { name: 'Ways on' })
  await expect(ways).toContainText('Its step has passed')
  await expect(ways).toContainText('0.00 % sclerotium gum; the formula starts at 0.38 %')
  await expect(ways.getByRole('button', { name: /Scale the rest/ })).toContainText('too late')
  await ways.getByRole('button', { name: /Start again: main beaker/ }).click()
  await run.press(page, 'forgotten')
  await run.press(page, /^Discard 369\.85/)
  await expect(run.inSoFar(page)).toContainText('0.00 of 500.00 g')
})

test('[R30] something foreign in the vessel: what it breaks is told, and it is diluted', async ({ page, context }) => {
  await setOutBench(page, context)
  await chooseFormula(page, 'Oat barrier body lotion')
  await settleLotion(page)
  await openBatch(page)
  await run.weighByKeys(page, '348.85')
  await run.press(page, /Add something/)
  await page.getByLabel('What', { exact: true }).selectOption({ label: 'Sodium benzoate' })
  await page.getByLabel('How much').fill('2.75')
  await run.press(page, 'to see what it does')
  await run.press(page, 'Record it')
  const ways = page.getByRole('region', { name: 'Ways on' })
  await expect(ways).toContainText('0.55 % sodium benzoate; its use level stops at 0.50 %')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Sodium benzoate')
  await ways.getByRole('button', { name: /Make a little more/ }).click()
  await run.press(page, /^Make 550.00/)
  await expect(run.inSoFar(page)).toContainText('of 550.00')
})

/** Past what closes the step, with a reason. */
async function goPast(page: Page): Promise<void> {
  await run.press(page, /^Go on|anyway|say why/)
  await run.press(page, 'trial batch')
  await run.press(page, 'Go on')
}
