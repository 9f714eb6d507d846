/** A tablet with no room left: what can be kept is kept and said, and nothing that is typed goes. */
import type { BrowserContext, Page } from '@playwright/test'
import { expect, openAgain, passes, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B24] with storage full the run goes on with one copy and says so, and has two again once there is room', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  const line = run.rung(page, 'Cetearyl alcohol')
  await run.weighByPad(page, '3.5')
  await expect(line).toHaveAttribute('data-state', 'recorded')

  const room = await roomOf(page, context)
  await room.full()
  await run.weighByPad(page, '2.25')
  await expect(line).toContainText('5.750 g of 12.500')
  await expect(line).toHaveAttribute('data-state', 'one-copy')
  await expect(line).toContainText('one copy')
  await run.weighByPad(page, '2')
  await expect(line).toContainText('7.750 g of 12.500')
  await run.tapNumber(page, '4.7')
  await expect(run.reading(page)).toHaveValue('4.7')

  await room.free()
  await passes(page, '01:00')
  await expect(line).toHaveAttribute('data-state', 'recorded')
  await expect(line).not.toContainText('one copy')
  await openAgain(page)
  await expect(line).toContainText('7.750 g of 12.500')
  await expect(line).toHaveAttribute('data-state', 'recorded')
  await expect(run.reading(page)).toHaveValue('4.7')
})

/** Lets the browser believe that the origin has used all its room, or not. */
async function roomOf(page: Page, context: BrowserContext) {
  const session = await context.newCDPSession(page)
  const { origin } = new URL(page.url())
  return {
    full: () => session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 }),
    free: () => session.send('Storage.overrideQuotaForOrigin', { origin }),
  }
}
