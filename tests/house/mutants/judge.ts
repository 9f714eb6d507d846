/** Puts a mutant before the tests that run through it, one at a time, until one of them fails. */
import { Script } from 'node:vm'
import { endlessCode, switchboard } from './switchboard.ts'

/** A test that passed on whole code, and what it ran through. */
export interface KeptTest {
  readonly file: string
  readonly name: string
  /** Hooks and all, as often as it is called. */
  readonly run: () => unknown
  readonly covers: ReadonlySet<string>
  /** How many places that can be broken it came to: how long it takes, by a measure that is the same every time. */
  readonly steps: number
  readonly tookMs: number
}

export type Verdict = 'noticed' | 'endless' | 'survived'

type Outcome = 'passes' | 'fails' | 'endless'

/** What one mutant may take of all tests: nearly everything that is noticed is noticed by far less. */
const mostOfAll = 1 / 15

/** Judges with whatever these tests notice; those first that are about little and soon over. */
export const judgeWith = (tests: readonly KeptTest[]): ((mutant: string) => Promise<Verdict>) => {
  const sharpFirst = [...tests].sort((one, other) => one.steps * one.covers.size - other.steps * other.covers.size)
  const mostSteps = tests.reduce((sum, { steps }) => sum + steps, 0) * mostOfAll
  return async (mutant) => {
    let steps = 0
    for (const test of sharpFirst.filter(({ covers }) => covers.has(mutant))) {
      const outcome = await outcomeOf(test, mutant)
      if (outcome !== 'passes') {
        await stillPasses(test, mutant)
        return outcome === 'endless' ? 'endless' : 'noticed'
      }
      steps += test.steps
      if (steps > mostSteps) break
    }
    return 'survived'
  }
}

const stillPasses = async (test: KeptTest, mutant: string): Promise<void> => {
  if ((await outcomeOf(test, undefined)) === 'passes') return
  throw new Error(
    `After mutant ${mutant} the test "${test.name}" of ${test.file} fails on whole code too, so that it cannot judge.`,
  )
}

const outcomeOf = async (test: KeptTest, mutant: string | undefined): Promise<Outcome> => {
  switchboard.turn(mutant)
  try {
    await withinLimit(test)
    return 'passes'
  } catch (error) {
    return error instanceof Error && 'code' in error && endlessCodes.includes(error.code) ? 'endless' : 'fails'
  } finally {
    switchboard.turn(undefined)
  }
}

const endlessCodes: readonly unknown[] = [endlessCode, 'ERR_SCRIPT_EXECUTION_TIMEOUT']

declare global {
  var mutantTest: (() => unknown) | undefined
}
const call = new Script('globalThis.mutantTest()')

/** Only a script's own limit ends a loop that never comes back: far longer than on whole code is endless. */
const withinLimit = ({ run, tookMs }: KeptTest): unknown => {
  globalThis.mutantTest = run
  return call.runInThisContext({ timeout: Math.ceil(4_000 + 20 * tookMs) })
}
