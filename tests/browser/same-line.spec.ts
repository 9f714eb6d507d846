import type { Page } from '@playwright/test'
import { expect, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B23] a line weighed whole on two pages at once is in once; the other page is told, and keeps its number', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  const other = await context.newPage()
  await other.goto(page.url())
  await other.locator('[data-place="run"]').waitFor()
  for (const each of [page, other]) {
    // A page that is not in front draws slowly, as any browser has it.
    await each.bringToFront()
    await run.takeStep(each, 'Oil phase', 'Cetearyl alcohol')
    await run.tapNumber(each, '12.5')
  }
  await recordAtOnce(page, other)
  const told = (each: Page) => each.getByText('This step is done. Strike its entry out to do it again').first()
  await expect.poll(async () => (await told(page).count()) + (await told(other).count())).toBe(1)
  const late = (await told(page).count()) === 1 ? page : other
  await late.bringToFront()
  await expect(run.rung(late, 'Cetearyl alcohol')).toContainText('12.500 g of 12.500')

  await run.takeStep(late, 'Oil phase', 'Cetearyl alcohol')
  await run.press(late, /^Strike out: Weighed/)
  await run.press(late, 'mistyped')
  await run.press(late, 'Strike it out')
  await expect(run.rung(late, 'Cetearyl alcohol')).toContainText('now · 12.500 g')
  await expect(run.reading(late)).toHaveValue('12.5')
})

/** Presses Record on both within a millisecond, which is sooner than either can have written and told the other. */
async function recordAtOnce(page: Page, other: Page): Promise<void> {
  await other.evaluate(() => {
    const record = document.querySelector<HTMLElement>('[data-action="record"]')
    new BroadcastChannel('at once').onmessage = () => record?.click()
  })
  await page.evaluate(() => {
    new BroadcastChannel('at once').postMessage('now')
    document.querySelector<HTMLElement>('[data-action="record"]')?.click()
  })
}
