/** A Chromium with a profile of its own that can be killed as a whole, as a system that runs out of memory would. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { type Browser, type BrowserContext, chromium, type Page } from '@playwright/test'
import { chromiumArguments, provideChromium } from '../house/chromium.ts'

export interface KillableChrome {
  readonly browser: Browser
  readonly context: BrowserContext
  readonly page: Page
  /** Every process of it, at once and without a word (SIGKILL); returns when they are gone. */
  kill(): Promise<void>
  /** As a person would close it. */
  close(): Promise<void>
}

const startWithinMs = 20_000

/** Starts Chromium on a profile folder, which outlives it. */
export const startChrome = async (userDataDir: string, more: readonly string[] = []): Promise<KillableChrome> => {
  const portFile = join(userDataDir, 'DevToolsActivePort')
  rmSync(portFile, { force: true })
  const child = spawn(
    provideChromium(),
    [
      ...chromiumArguments,
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${userDataDir}`,
      '--window-size=1280,800',
      ...more,
      'about:blank',
    ],
    // A process group of its own, so that one signal reaches all of its processes.
    { detached: true, stdio: 'ignore' },
  )
  const gone = once(child, 'exit')
  try {
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await debuggingPort(portFile, child)}`)
    const [context] = browser.contexts()
    if (context === undefined) throw new Error('Chromium opened without a window.')
    const page = context.pages()[0] ?? (await context.newPage())
    return {
      browser,
      context,
      page,
      kill: async () => {
        killGroup(child)
        await gone
        await browser.close().catch(() => undefined)
      },
      close: async () => {
        const session = await browser.newBrowserCDPSession()
        await session.send('Browser.close').catch(() => undefined)
        await gone
      },
    }
  } catch (error) {
    killGroup(child)
    throw error
  }
}

const debuggingPort = async (portFile: string, child: ChildProcess): Promise<number> => {
  for (let waitedMs = 0; waitedMs < startWithinMs; waitedMs += 25) {
    const port = Number(readIfThere(portFile).split('\n')[0])
    if (port > 0) return port
    if (child.exitCode !== null) throw new Error(`Chromium ended with ${child.exitCode} before it could be reached.`)
    await pause(25)
  }
  throw new Error('Chromium did not open its debugging port.')
}

const readIfThere = (file: string): string => {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return ''
  }
}

const killGroup = (child: ChildProcess): void => {
  if (child.pid === undefined) return
  try {
    process.kill(-child.pid, 'SIGKILL')
  } catch {
    // Gone already.
  }
}
