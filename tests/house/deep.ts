/** `npm run test:deep`: the slow proof. Properties 2,000 times over, 50 process kills, mutants, the browser tests. */
import { spawnSync } from 'node:child_process'
import { provideBuild } from './build.ts'
import { provideChromium } from './chromium.ts'
import { add, type Counts, finish, runBrowser, runVitest } from './suites.ts'

const executable = provideChromium()
provideBuild()
const sums = runVitest(['--testTimeout=600000'], { PROPERTY_RUNS: '2000' })
const flows = runBrowser([], { CHROMIUM_PATH: executable })

const proof = (args: readonly string[]): Counts =>
  spawnSync('npx', ['tsx', ...args], { stdio: 'inherit' }).status === 0
    ? { passed: 1, failed: 0 }
    : { passed: 0, failed: 1 }

const kills = proof(['tests/faults/run.ts', '--kills', '50'])
const mutants = proof(['tests/house/mutants.ts', '--mutants', '5000'])
finish([sums, flows, kills, mutants].reduce(add))
