import { expect, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[U35] what is on the screen hears the keyboard: a key that comes with the ways on chooses one', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  await page.evaluate(() => {
    const comes = new MutationObserver(() => {
      if (document.querySelector('.ways') === null) return
      comes.disconnect()
      document.dispatchEvent(new KeyboardEvent('keydown', { key: '2' }))
    })
    comes.observe(document, { childList: true, subtree: true })
  })
  await run.weighByKeys(page, '14')
  const second = page.getByRole('region', { name: 'Ways on' }).getByRole('listitem').nth(1).getByRole('button')
  await expect(second).toHaveAttribute('aria-pressed', 'true')
})

test('[U36] an Enter behind digits ends the number whatever was pressed before it; one behind Tab presses what has the focus', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  const rung = run.rung(page, 'Cetearyl alcohol')
  await rung.getByRole('button').click()
  await expect(rung.getByRole('button')).toBeFocused()
  await run.weighByKeys(page, '3.5')
  await expect(rung).toContainText('3.500 g of 12.500')

  await rung.getByRole('button').focus()
  await run.typeKeys(page, '4')
  await page.keyboard.press('Tab')
  const next = await page.evaluate(() => document.activeElement?.textContent)
  await page.keyboard.press('Enter')
  await expect(run.stepInHand(page)).not.toHaveText('Cetearyl alcohol')
  expect(next).toContain(await run.stepInHand(page).textContent())
  await expect(rung).toContainText('3.500 g of 12.500')
})
