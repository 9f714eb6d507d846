import { appendFileSync, cpSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serveFolder } from '../house/serve.ts'
import { appStarted, openApp } from './support/app.ts'
import { expect, morning, passes, takeUp, test } from './support/bench.ts'
import { watchContext } from './support/guard.ts'
import * as run from './support/run.ts'

test('[B6] a new version that comes in mid-run waits, is offered once no clock runs, and keeps everything', async ({
  browser,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'pannikin-mid-run-'))
  cpSync('dist', folder, { recursive: true })
  const { server, origin } = await serveFolder(folder, 0)
  const context = await browser.newContext({ baseURL: `${origin}/` })
  const wrongs = watchContext(context, origin)
  await context.clock.install({ time: morning })
  const page = await context.newPage()
  await openApp(page)
  await page.getByRole('button', { name: 'Load the demonstration' }).click()
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Water phase', 'Hydrate the gum')
  await run.startClock(page, /^Start 20 min/)
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  await run.tapNumber(page, '8.2')
  await page.evaluate(() => {
    document.documentElement.dataset.samePage = 'yes'
  })

  appendFileSync(join(folder, 'sw.js'), '\n// another version\n')
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    await registration.update()
  })
  const waiting = () =>
    page.evaluate(async () => (await navigator.serviceWorker.ready).waiting?.state ?? 'nothing waits')
  await expect.poll(waiting, { timeout: 20_000 }).toBe('installed')
  await expect(run.reading(page)).toHaveValue('8.2')
  const setup = () => page.goto('./#/setup/tablet')
  await setup()
  await expect(page.getByText('A new version is here. It is offered once no timer runs.')).toBeVisible()
  await expect(page.locator('html[data-same-page]')).toBeAttached()

  await passes(page, '20:01')
  await page.getByRole('button', { name: 'Stop the bell' }).click()
  await page.getByRole('button', { name: 'Take the new version' }).click()
  await expect(page.locator('html[data-same-page]')).not.toBeAttached()
  await appStarted(page)
  expect(await waiting()).toBe('nothing waits')
  await page.goto('./#/bench')
  await takeUp(page, 'Lotion 013')
  await run.takeStep(page, 'Oil phase', 'Cetearyl alcohol')
  await expect(run.reading(page)).toHaveValue('8.2')
  await context.close()
  server.close()
  expect(wrongs).toEqual([])
})
