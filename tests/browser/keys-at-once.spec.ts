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
