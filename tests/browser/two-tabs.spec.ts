import type { Page } from '@playwright/test'
import { expect, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B5] two pages on one batch: neither loses an entry, each shows what the other did', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  const other = await context.newPage()
  await other.goto(page.url())
  await other.locator('[data-place="run"]').waitFor()

  await test.step('different lines at once', async () => {
    await typeInto(page, 'Cool-down', 'Panthenol 75 %', '6.65')
    await typeInto(other, 'Cool-down', 'Tocopherol', '1.5')
    await recordAtOnce(page, other)
    for (const each of [page, other]) {
      await expect(run.rung(each, 'Panthenol 75 %')).toContainText('6.650 g of 6.650')
      await expect(run.rung(each, 'Tocopherol')).toContainText('1.500 g of 1.500')
    }
    await expect(elsewhere(page)).toContainText('Tocopherol')
    await expect(elsewhere(other)).toContainText('Panthenol')
  })

  await test.step('parts of one line at once', async () => {
    await typeInto(page, 'Oil phase', 'Cetearyl alcohol', '6.2')
    await typeInto(other, 'Oil phase', 'Cetearyl alcohol', '6.3')
    await recordAtOnce(page, other)
    for (const each of [page, other])
      await expect(run.rung(each, 'Cetearyl alcohol')).toContainText('12.500 g of 12.500')
  })

  await test.step('what one strikes out, the other sees gone', async () => {
    await page.bringToFront()
    await run.takeStep(page, 'Cool-down', 'Tocopherol')
    await run.press(page, /^Strike out: Weighed .* of Tocopherol/)
    await run.press(page, 'mistyped')
    await run.press(page, 'Strike it out')
    await other.bringToFront()
    await run.takeStep(other, 'Cool-down', 'Tocopherol')
    await expect(run.rung(other, 'Tocopherol')).toContainText('now · 1.500 g')
  })
})

const elsewhere = (page: Page) => page.getByRole('status').filter({ hasText: 'On another page' })

/** A page that is not in front draws slowly, as any browser has it. */
async function typeInto(page: Page, phase: string, line: string, number: string): Promise<void> {
  await page.bringToFront()
  await run.takeStep(page, phase, line)
  await run.tapNumber(page, number)
}

const recordAtOnce = (...pages: readonly Page[]) =>
  Promise.all(pages.map((page) => run.recordButton(page).dispatchEvent('click')))
