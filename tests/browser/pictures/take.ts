/**
 * `npm run pictures`: drives a real run to its scales and takes the picture of the README. With `-- --all folder` it takes
 * every place and the states of a run as well, in three sizes and both themes, to be looked at.
 */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import { provideBuild } from '../../house/build.ts'
import { chromiumArguments, provideChromium } from '../../house/chromium.ts'
import { serveFolder } from '../../house/serve.ts'
import { morning, passes, setOutBench, takeUp } from '../support/bench.ts'
import * as run from '../support/run.ts'
import { chooseFormula, openBatch, settleLotion } from '../support/start.ts'
import { states } from './states.ts'

const landscape = { width: 1280, height: 800 }
const sizes = { landscape, portrait: { width: 800, height: 1280 }, phone: { width: 390, height: 844 } }

const { values } = parseArgs({ options: { all: { type: 'string' } } })
provideBuild()
const { server, origin } = await serveFolder('dist', 0)
const browser = await chromium.launch({ executablePath: provideChromium(), args: chromiumArguments })
try {
  const context = await browser.newContext({
    baseURL: `${origin}/`,
    viewport: landscape,
    hasTouch: true,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    reducedMotion: 'reduce',
  })
  await context.clock.install({ time: morning })
  const page = await context.newPage()
  await weighGum(page, context)
  await page.screenshot({ path: 'tests/browser/pictures/run.png' })
  if (values.all !== undefined) await takeAll(page, values.all)
} finally {
  await browser.close()
  server.close()
}

/** Formula 1 up to its gum, 0.17 g short, while the gel on the next plate hydrates. */
async function weighGum(page: Page, context: BrowserContext): Promise<void> {
  await setOutBench(page, context)
  await takeUp(page, 'Gel 001')
  await run.startClock(page, /^Start 45 min/)
  await passes(page, '38:48')
  await page.getByRole('link', { name: 'Bench' }).click()
  await chooseFormula(page, 'Oat barrier body lotion')
  await settleLotion(page)
  await openBatch(page)
  for (const mass of ['348.85', '1.002', '20.04']) await run.weighByPad(page, mass)
  await page.getByRole('button', { name: /^lot SG-214/ }).click()
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^SG-221/ })
    .click()
  await run.tapNumber(page, '1.83')
  await page.getByRole('status').filter({ hasText: 'Recorded' }).waitFor({ state: 'detached' })
}

async function takeAll(page: Page, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true })
  await everySize(page, folder, 'run-gum')
  for (const { name, address, shows, prepare } of states) {
    await page.setViewportSize(landscape)
    await page.goto('./#/bench')
    await page.getByText('Checks today').waitFor()
    await page.goto(`./#/${address}`)
    await page.getByText(shows).first().waitFor()
    await prepare?.(page)
    await everySize(page, folder, name)
  }
}

async function everySize(page: Page, folder: string, name: string): Promise<void> {
  for (const [size, viewport] of Object.entries(sizes))
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(viewport)
      await page.emulateMedia({ colorScheme })
      await page.screenshot({ path: join(folder, `${name}-${size}-${colorScheme}.png`) })
    }
}
