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
  /** Each opening of the browser ends, by a kill where nothing else is said or where the work fails. */
  const opening = async (end: 'kill' | 'close', work: (page: Page) => Promise<void>): Promise<void> => {
    const chrome = await startChrome(profile)
    try {
      await chrome.page.goto(`${origin}/`)
      await appStarted(chrome.page)
      await work(chrome.page)
      if (end === 'close') await chrome.close()
    } finally {
      await chrome.kill()
    }
  }
  const line = (page: Page) => run.rung(page, 'Cetearyl alcohol')
  try {
    let left = 0
    await opening('kill', async (page) => {
      await appKept(page)
      await page.getByRole('button', { name: 'Load the demonstration' }).click()
      await takeUp(page, 'Lotion 013')
      await halfWeigh(page)
      left = await clockOf(page)
    })
    await opening('kill', async (page) => {
      await takeUp(page, 'Lotion 013')
      await expectHalfWeighed(page)
      expect(await clockOf(page)).toBeLessThan(left)
    })
    // What is written behind the tear takes the whole database along at the opening after it.
    expect(tearLog(profile, origin)).toBeDefined()
    await opening('close', async (page) => {
      await takeUp(page, 'Lotion 013')
      await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
      await expect(line(page)).toContainText('3.500 g of 12.500')
      await run.reading(page).fill('0.5')
      await run.recordButton(page).click()
      await expect(line(page)).toContainText('4.000 g of 12.500')
    })
    await opening('close', async (page) => {
      // Said once where the person is, and put away; Setup keeps it.
      const said = page.getByText('The database was behind').first()
      await expect(said).toBeVisible()
      await page.getByRole('button', { name: 'Good to know' }).click()
      await expect(said).toBeHidden()
      await takeUp(page, 'Lotion 013')
      await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
      await expect(line(page)).toContainText('4.000 g of 12.500')
      await expect(page.getByRole('button', { name: /^Hydrate the gum \d\d:\d\d left/ })).toBeVisible()
      await page.goto(`${origin}/#/setup/storage`)
      await expect(page.getByRole('main')).toContainText('The database was behind')
    })
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
  const text = await page.getByRole('button', { name: /^Hydrate the gum \d\d:\d\d left/ }).textContent()
  const [, minutes = '', seconds = ''] = /(\d\d):(\d\d)/.exec(text ?? '') ?? []
  return Number(minutes) * 60 + Number(seconds)
}
