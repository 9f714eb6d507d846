import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { startChrome } from '../faults/chrome.ts'
import { tearLog } from '../faults/torn-log.ts'
import { serveFolder } from '../house/serve.ts'
import { appKept, appStarted } from './support/app.ts'
import { expect, openAgain, passes, setOutBench, takeUp, test } from './support/bench.ts'
import * as run from './support/run.ts'

test('[B3] a reload in the middle of a step comes back to that step, its digits and its clocks', async ({
  page,
  context,
}) => {
  await setOutBench(page, context)
  await takeUp(page, 'Lotion 013')
  await halfWeigh(page)
  await passes(page, '06:00')
  await openAgain(page)
  await expectHalfWeighed(page)
  // The clock went on while the page was away.
  await expect(page.getByRole('button', { name: /^Hydrate the gum 13:/ })).toBeVisible()
})

test('[B4] a killed browser comes back to the step, its digits and its clocks; a torn database is healed, and said', async () => {
  test.setTimeout(90_000)
  const profile = mkdtempSync(join(tmpdir(), 'pannikin-kill-'))
  const { server, origin } = await serveFolder('dist', 0)
  try {
    const first = await startChrome(profile)
    await first.page.goto(`${origin}/`)
    await appStarted(first.page)
    await appKept(first.page)
    await first.page.getByRole('button', { name: 'Load the demonstration' }).click()
    await takeUp(first.page, 'Lotion 013')
    await halfWeigh(first.page)
    const left = await clockOf(first.page)
    await first.kill()

    const second = await startChrome(profile)
    await second.page.goto(`${origin}/`)
    await appStarted(second.page)
    await takeUp(second.page, 'Lotion 013')
    await expectHalfWeighed(second.page)
    expect(await clockOf(second.page)).toBeLessThan(left)
    await second.kill()

    // What is written behind the tear takes the whole database along at the opening after it.
    expect(tearLog(profile, origin)).toBeDefined()
    const third = await startChrome(profile)
    await third.page.goto(`${origin}/`)
    await appStarted(third.page)
    await takeUp(third.page, 'Lotion 013')
    await run.takeStep(third.page, 'Oil phase', 'Cetearyl alcohol')
    await expect(run.rung(third.page, 'Cetearyl alcohol')).toContainText('3.500 g of 12.500')
    await run.reading(third.page).fill('0.5')
    await run.recordButton(third.page).click()
    await expect(run.rung(third.page, 'Cetearyl alcohol')).toContainText('4.000 g of 12.500')
    await third.close()

    const fourth = await startChrome(profile)
    await fourth.page.goto(`${origin}/`)
    await appStarted(fourth.page)
    await takeUp(fourth.page, 'Lotion 013')
    await run.takeStep(fourth.page, 'Oil phase', 'Cetearyl alcohol')
    await expect(run.rung(fourth.page, 'Cetearyl alcohol')).toContainText('4.000 g of 12.500')
    await expect(fourth.page.getByRole('button', { name: /^Hydrate the gum \d\d:\d\d left/ })).toBeVisible()
    await fourth.page.goto(`${origin}/#/setup/storage`)
    await expect(fourth.page.getByRole('main')).toContainText('The database was behind')
    await fourth.close()
  } finally {
    server.close()
    rmSync(profile, { recursive: true, force: true, maxRetries: 10 })
  }
})

/** A clock runs, one line is part weighed, and the next number stands half-typed. */
async function halfWeigh(page: Page): Promise<void> {
  await run.takeStep(page, 'Water phase', 'Hydrate the gum')
  await run.startClock(page, /^Start 20 min/)
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  await run.weighByKeys(page, '3.5')
  await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('3.500 g of 12.500')
  await run.typeKeys(page, '8.2')
  await page.waitForTimeout(300)
}

async function expectHalfWeighed(page: Page): Promise<void> {
  await expect(run.stepInHand(page)).toHaveText('Cetearyl alcohol')
  await expect(run.reading(page)).toHaveValue('8.2')
  await expect(run.rung(page, 'Cetearyl alcohol')).toContainText('3.500 g of 12.500')
  await expect(page.getByRole('button', { name: /^Hydrate the gum \d\d:\d\d left/ })).toBeVisible()
}

/** Seconds left on the hydration's clock. */
async function clockOf(page: Page): Promise<number> {
  const text = await page.getByRole('button', { name: /^Hydrate the gum \d\d:\d\d left/ }).innerText()
  const [, minutes = '', seconds = ''] = /(\d\d):(\d\d)/.exec(text) ?? []
  return Number(minutes) * 60 + Number(seconds)
}
