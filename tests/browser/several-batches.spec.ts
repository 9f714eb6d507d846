import { expect, openAgain, passes, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B7] two batches at once: both clocks in sight, one tap between them, a bell that waits and says how late', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Water phase', 'Hydrate the gum')
  await run.startClock(page, /^Start 20 min/)
  await page.getByRole('link', { name: 'Bench' }).click()
  await takeUp(page, 'Gel 001')
  await expect(run.stepInHand(page)).toHaveText('Hydrate the carbomer')
  await run.startClock(page, /^Start 45 min/)

  const chips = page.getByRole('list', { name: 'Timers and what waits' })
  await expect(chips).toContainText('Hydrate the carbomer')
  await chips.getByRole('link', { name: /^Lotion 013, Hydrate the gum/ }).click()
  await expect(page.locator('.strip')).toContainText('Oat barrier body lotion')
  await chips.getByRole('link', { name: /^Gel 001, Hydrate the carbomer/ }).click()
  await expect(page.locator('.strip')).toContainText('hair gel')

  await passes(page, '21:30')
  const bell = chips.getByRole('button', { name: /^Lotion 013, Hydrate the gum Stop/ })
  await expect(bell).toContainText(/Stop, 01:[34]\d late/)
  await expect(page).toHaveTitle('(1) Pannikin')
  await openAgain(page)
  await expect(bell).toContainText(/Stop, 01:[345]\d late/)
  await expect(run.stepInHand(page)).toHaveText('Hydrate the carbomer')
  await page.getByRole('link', { name: 'Bench' }).click()
  await expect(page.getByRole('alert')).toContainText('Lotion 013: Hydrate the gum is over')
  await page.getByRole('button', { name: 'Go to lotion' }).click()
  await expect(page).toHaveTitle('Pannikin')
  await expect(chips.getByText(/late/)).toHaveCount(0)

  await passes(page, '25:00')
  await expect(page).toHaveTitle('(1) Pannikin')
  await chips.getByRole('button', { name: /^Gel 001, Hydrate the carbomer Stop/ }).click()
  await expect(page).toHaveTitle('Pannikin')
})
