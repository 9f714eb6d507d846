/** `npm run browser -- [arguments of the browser test runner]`: the browser tests alone. */
import { provideBuild } from './build.ts'
import { provideChromium } from './chromium.ts'
import { finish, runBrowser } from './suites.ts'

const executable = provideChromium()
provideBuild()
finish(runBrowser(process.argv.slice(2), { CHROMIUM_PATH: executable }))
