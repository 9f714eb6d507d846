/** Set up before every test file: keeps each test that passed, with the mutants it ran through. */
import { setMaxListeners } from 'node:events'
import fc from 'fast-check'
import { afterEach, beforeEach, type RunnerTestCase, TestRunner } from 'vitest'
import { keep } from './kept.ts'
import { switchboard } from './switchboard.ts'

// The same random cases every time: a mutant is noticed by what it breaks, not by luck. Nobody reads the smallest case.
fc.configureGlobal({ seed: 5, endOnFailure: true })

let covers = new Set<string>()
let stepsBefore = 0
let startedAt = 0

beforeEach(() => {
  // A test that judges brings this hook along.
  if (switchboard.covered === undefined) return
  switchboard.turn(undefined)
  covers = new Set()
  switchboard.covered = covers
  stepsBefore = switchboard.steps
  startedAt = performance.now()
})

afterEach(({ task }) => {
  const tookMs = performance.now() - startedAt
  switchboard.covered = switchboard.loaded
  if (task.result?.state !== 'pass') return
  const steps = switchboard.steps - stepsBefore
  keep({ file: task.file.name, name: task.name, run: runAgain(task), covers, steps, tookMs })
})

const runAgain = (task: RunnerTestCase): (() => unknown) => {
  // Every run listens anew for the end of the whole.
  setMaxListeners(0, task.context.signal)
  const hooks = hooksBefore(task)
  const test = TestRunner.getTestFn(task)
  // Only what runs before the first wait can be stopped, so nothing waits that need not.
  if (hooks.length === 1) return test
  return async () => {
    for (const hook of hooks) await hook(task.context, task.suite ?? task.file)
    await test()
  }
}

/** From the file's own, where the one of this setup stands, to the innermost group's. */
const hooksBefore = (task: RunnerTestCase) => {
  const hooks = []
  for (let suite = task.suite ?? task.file; ; suite = suite.suite ?? suite.file) {
    hooks.unshift(...TestRunner.getSuiteHooks(suite).beforeEach)
    if (suite === task.file) return hooks
  }
}
