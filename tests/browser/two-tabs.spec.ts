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
    await run.takeStep(page, 'Cool-down', 'Panthenol 75 %')
    await run.takeStep(other, 'Cool-down', 'Tocopherol')
    await run.tapNumber(page, '6.65')
    await run.tapNumber(other, '1.5')
    await Promise.all([run.recordButton(page).tap(), run.recordButton(other).tap()])
    for (const each of [page, other]) {
      await expect(run.rung(each, 'Panthenol 75 %')).toContainText('6.650 g of 6.650')
      await expect(run.rung(each, 'Tocopherol')).toContainText('1.500 g of 1.500')
    }
    await expect(page.getByText(/On another page: Weighed 1.50 g of Tocopherol/)).toBeVisible()
    await expect(other.getByText(/On another page: Weighed 6.65 g of Panthenol/)).toBeVisible()
  })

  await test.step('parts of one line at once', async () => {
    for (const each of [page, other]) await run.takeStep(each, 'Oil phase', 'Cetearyl alcohol')
    await run.tapNumber(page, '6.2')
    await run.tapNumber(other, '6.3')
    await Promise.all([run.recordButton(page).tap(), run.recordButton(other).tap()])
    for (const each of [page, other])
      await expect(run.rung(each, 'Cetearyl alcohol')).toContainText('12.500 g of 12.500')
  })

  await test.step('what one strikes out, the other sees gone', async () => {
    await run.takeStep(page, 'Cool-down', 'Tocopherol')
    await run.press(page, /^Strike out: Weighed 1.50 g of Tocopherol/)
    await run.press(page, 'mistyped')
    await run.press(page, 'Strike it out')
    await run.takeStep(other, 'Cool-down', 'Tocopherol')
    await expect(run.rung(other, 'Tocopherol')).not.toContainText('1.500 g of 1.500')
  })
})
