/**
 * `npx tsx tests/house/mutants.ts --mutants N [--seed S]`: breaks the sums and the rules of a batch in about N small
 * ways, one at a time, and sees whether a test notices. Prints JSON; exits 1 where fewer than 70 % are noticed.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { codeOnly } from './source-text.ts'
import { filesUnder } from './sources.ts'

const linesAStretch = 12
/** Mutants that a counted sign gives, as measured: a condition alone gives three or four. */
const mutantsASign = 2.9
const leastNoticed = 0.7

interface Stretch {
  readonly range: string
  readonly mutants: number
}

const { values } = parseArgs({
  options: { mutants: { type: 'string', default: '500' }, seed: { type: 'string', default: '1' } },
})
const wanted = Number(values.mutants)

/** Short stretches of code with a guess at how many mutants each gives: operators, literals and blocks. */
const stretches = (): readonly Stretch[] =>
  ['src/trade', 'src/batch']
    .flatMap(filesUnder)
    .filter((path) => path.endsWith('.ts'))
    .flatMap((path) => {
      const lines = readFileSync(path, 'utf8').split('\n')
      const starts = [...lines.keys()].filter((index) => index % linesAStretch === 0)
      return starts.map((from) => {
        const to = Math.min(from + linesAStretch, lines.length)
        return { range: `${path}:${from + 1}-${to}`, mutants: guess(lines.slice(from, to).join('\n')) }
      })
    })
    .filter(({ mutants }) => mutants > 0)

const guess = (source: string): number =>
  mutantsASign *
  [...codeOnly(source).matchAll(/[<>=!]==?|&&|\|\||\?\?|\s[-+*/%<>?]\s|=>|\btrue\b|\bfalse\b|[)\s]\{/g)].length

/** The same seed picks the same stretches (a linear congruential generator, numbers of Park and Miller). */
const shuffled = <T>(items: readonly T[], seed: number): readonly T[] => {
  let state = seed % 2147483647
  const random = (): number => {
    state = (state * 48271) % 2147483647
    return state
  }
  return items
    .map((item) => ({ item, key: random() }))
    .sort((one, other) => one.key - other.key)
    .map(({ item }) => item)
}

const chosen: string[] = []
let guessed = 0
for (const { range, mutants } of shuffled(stretches(), Number(values.seed))) {
  if (guessed >= wanted) break
  chosen.push(range)
  guessed += mutants
}

mkdirSync('.cache', { recursive: true })
writeFileSync(
  '.cache/mutants-config.json',
  JSON.stringify({
    mutate: chosen,
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: 'tests/house/mutants.vitest.ts' },
    coverageAnalysis: 'perTest',
    // Rewriting the compiler's settings needs an interface that this compiler does not have; nothing here needs it.
    tsconfigFile: 'none.json',
    concurrency: 2,
    timeoutMS: 6_000,
    tempDirName: mkdtempSync(join(tmpdir(), 'pannikin-mutants-')),
    ignorePatterns: ['dist', '.cache', 'public', 'demo-data', 'test-results', 'tests/browser', 'tests/faults'],
    reporters: ['progress-append-only', 'json'],
    jsonReporter: { fileName: '.cache/mutants.json' },
    allowEmpty: false,
  }),
)
const run = spawnSync('npx', ['stryker', 'run', '.cache/mutants-config.json'], {
  stdio: 'inherit',
  env: { ...process.env, PROPERTY_RUNS: '12' },
})
if (run.status !== 0) process.exit(run.status ?? 1)

interface Report {
  readonly files: Readonly<Record<string, { readonly mutants: readonly Mutant[] }>>
}
interface Mutant {
  readonly status: string
  readonly mutatorName: string
  readonly replacement?: string
  readonly location: { readonly start: { readonly line: number } }
}

const report = JSON.parse(readFileSync('.cache/mutants.json', 'utf8')) as Report
const mutants = Object.entries(report.files).flatMap(([path, file]) => file.mutants.map((mutant) => ({ path, mutant })))
const count = (...statuses: string[]): number => mutants.filter(({ mutant }) => statuses.includes(mutant.status)).length
const killed = count('Killed', 'Timeout')
const survived = count('Survived', 'NoCoverage')
const survivors = mutants
  .filter(({ mutant }) => mutant.status === 'Survived' || mutant.status === 'NoCoverage')
  .map(({ path, mutant }) => `${path}:${mutant.location.start.line} ${mutant.mutatorName}: ${mutant.replacement ?? ''}`)
console.log(JSON.stringify({ mutants: killed + survived, killed, survived, survivors }, null, 1))
process.exit(killed >= leastNoticed * (killed + survived) ? 0 : 1)
