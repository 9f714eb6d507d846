/** Runs the two test runners and reads their own counts: the totals printed are theirs, never guessed. */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'

export interface Counts {
  readonly passed: number
  readonly failed: number
}

export const add = (one: Counts, other: Counts): Counts => ({
  passed: one.passed + other.passed,
  failed: one.failed + other.failed,
})

/** Unit, property, vector and rule tests. */
export const runVitest = (args: readonly string[] = [], env: NodeJS.ProcessEnv = {}): Counts => {
  const report = freshReport('vitest')
  const status = run(
    'npx',
    ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...args],
    env,
  )
  const { numPassedTests = 0, numFailedTests = 0 } = readReport<{ numPassedTests: number; numFailedTests: number }>(
    report,
  )
  return honest({ passed: numPassedTests, failed: numFailedTests }, status)
}

/** Browser tests, against the production build as it stands in `dist`. */
export const runBrowser = (args: readonly string[] = [], env: NodeJS.ProcessEnv = {}): Counts => {
  const report = freshReport('browser')
  const config = 'tests/browser/playwright.config.ts'
  const status = run('npx', ['playwright', 'test', '--config', config, ...args], env)
  const { expected = 0, unexpected = 0, flaky = 0 } = readReport<{ stats: BrowserStats }>(report).stats ?? {}
  return honest({ passed: expected, failed: unexpected + flaky }, status)
}

/** Prints the totals, keeps them for the closing line of the whole run, and ends with their exit code. */
export const finish = (counts: Counts): never => {
  mkdirSync('.cache', { recursive: true })
  writeFileSync('.cache/counts.json', `${JSON.stringify(counts)}\n`)
  console.log(`\n${counts.passed} passed, ${counts.failed} failed`)
  process.exit(counts.failed === 0 && counts.passed > 0 ? 0 : 1)
}

interface BrowserStats {
  readonly expected: number
  readonly unexpected: number
  readonly flaky: number
}

/** A runner that fails without a failing test (a file that does not load, a crash) counts as one failure. */
const honest = (counts: Counts, status: number): Counts =>
  status !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts

const run = (command: string, args: readonly string[], env: NodeJS.ProcessEnv): number =>
  spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } }).status ?? 1

const freshReport = (name: string): string => {
  mkdirSync('.cache', { recursive: true })
  const file = `${process.cwd()}/.cache/${name}.json`
  rmSync(file, { force: true })
  return file
}

const readReport = <T>(file: string): Partial<T> =>
  existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Partial<T>) : {}
