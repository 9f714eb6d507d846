/** `npm test`: everything that proves the rules, the browser tests against the production build included. */
import { provideBuild } from './build.ts'
import { provideChromium } from './chromium.ts'
import { add, finish, runBrowser, runVitest } from './suites.ts'

// First, so that a machine without a browser says so before anyone waits.
const executable = provideChromium()
provideBuild()
const sums = runVitest()
const flows = runBrowser([], { CHROMIUM_PATH: executable })
finish(add(sums, flows))
