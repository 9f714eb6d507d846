/** Chromium for the benches: pages whose processor can be slowed, whose taps are trusted, whose workers can be stopped. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, type CDPSession, chromium, type Page } from '@playwright/test'
import { chromiumArguments, provideChromium } from '../house/chromium.ts'

export interface BenchPage {
  readonly context: BrowserContext
  readonly page: Page
  readonly devtools: CDPSession
  close(): Promise<void>
}

/** A folder for a profile that outlives its browser; whoever asks for it removes it. */
export const newProfile = (): string => mkdtempSync(join(tmpdir(), 'pannikin-profile-'))

/** A browser with a profile on the disk, as a tablet has: a private window keeps no compiled code and no database. */
export const openPage = async (kept?: string): Promise<BenchPage> => {
  const profile = kept ?? newProfile()
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: provideChromium(),
    args: chromiumArguments,
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
  })
  const page = context.pages()[0] ?? (await context.newPage())
  page.setDefaultTimeout(60_000)
  return {
    context,
    page,
    devtools: await context.newCDPSession(page),
    close: async () => {
      await context.close()
      if (kept === undefined) rmSync(profile, { recursive: true, force: true })
    },
  }
}

/** Makes the page's processor so many times slower. */
export const slowDown = async ({ devtools }: BenchPage, times: number): Promise<void> => {
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: times })
}

/** A press and release at the middle of an element, as the browser gets them from a finger or a mouse. */
export const tap = async ({ page, devtools }: BenchPage, selector: string): Promise<void> => {
  const box = await page.locator(selector).boundingBox()
  if (box === null) throw new Error(`There is no ${selector} to tap.`)
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2, button: 'left' as const, clickCount: 1 }
  await devtools.send('Input.dispatchMouseEvent', { type: 'mousePressed', ...at })
  await devtools.send('Input.dispatchMouseEvent', { type: 'mouseReleased', ...at })
}

/** Opens a page with a service worker, and waits until that has stored all of it. */
export const openKept = async ({ page }: BenchPage, address: string): Promise<void> => {
  await page.goto(address)
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await page.reload()
}
