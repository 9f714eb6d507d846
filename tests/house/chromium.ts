/** Where the tests get a Chromium from: one that is there, else one they install, else a sentence that says what to do. */
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from '@playwright/test'

const debianPath = '/usr/bin/chromium'

/** The path of a usable Chromium. Installs nothing. */
export const findChromium = (): string | undefined =>
  [process.env.CHROMIUM_PATH, debianPath, chromium.executablePath()].find(
    (path) => path !== undefined && path !== '' && existsSync(path),
  )

/** The path of a usable Chromium, installed first where there is none. Throws a sentence where that fails too. */
export const provideChromium = (): string => {
  const found = findChromium()
  if (found !== undefined) return found
  if (isRootOnDebian()) installWithApt()
  if (findChromium() === undefined) installWithPlaywright()
  const installed = findChromium()
  if (installed !== undefined) return installed
  throw new Error(
    'The browser tests need Chromium, and none could be installed here. Install it by hand (on Debian: apt-get install chromium), or set CHROMIUM_PATH to the one you have.',
  )
}

/** As root the sandbox cannot be had; the rest keeps the browser from asking anything of the network by itself. */
export const chromiumArguments = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--no-first-run',
]

const isRootOnDebian = (): boolean => process.getuid?.() === 0 && existsSync('/etc/debian_version')

const installWithApt = (): void => {
  console.log('No Chromium here: installing the one of Debian.')
  const quiet = { stdio: 'inherit' as const, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }
  const updated = spawnSync('apt-get', ['update', '-qq'], quiet)
  if (updated.status === 0) spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quiet)
}

const installWithPlaywright = (): void => {
  console.log('No Chromium here: downloading the one of the browser tests.')
  try {
    execFileSync('npx', ['playwright', 'install', '--with-deps', 'chromium'], { stdio: 'inherit' })
  } catch {
    // The caller looks again and says what to do.
  }
}
