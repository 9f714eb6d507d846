import { describe, expect, it } from 'vitest'
import { breakCode, type Mutant } from './mutants/choose.ts'
import { judgeWith, type KeptTest } from './mutants/judge.ts'
import { switchboard } from './mutants/switchboard.ts'

/** Code that is broken in every way there is, and what it exports. */
const broken = async (content: string) => {
  const { mutants, files } = await breakCode([{ name: 'toy.js', content, mutate: true }], 100, 1)
  const module: unknown = await import(
    /* @vite-ignore */ `data:text/javascript,${encodeURIComponent(files['toy.js'] ?? '')}`
  )
  return { mutants, toy: module as Record<string, (given: number) => number> }
}

/** A test that has passed once, as the ones of a room are kept. */
const passed = (run: () => void): KeptTest => {
  const covers = new Set<string>()
  const [before, steps] = [switchboard.covered, switchboard.steps]
  switchboard.covered = covers
  run()
  switchboard.covered = before
  return { file: 'toy.test.js', name: 'of the toy', run, covers, steps: switchboard.steps - steps, tookMs: 1 }
}

const verdictsOf = async (mutants: readonly Mutant[], judge: ReturnType<typeof judgeWith>) => {
  const verdicts = new Map<string, string>()
  for (const { id, what } of mutants) verdicts.set(what, await judge(id))
  return Object.fromEntries(verdicts)
}

describe('the judge of mutants', () => {
  it('finds what a test notices, and what a weaker one lets through', async () => {
    const { mutants, toy } = await broken('export const larger = (given) => given > 3')
    const strong = judgeWith([
      passed(() => expect([2, 3, 4].map((n) => toy.larger?.(n))).toEqual([false, false, true])),
    ])
    const weak = judgeWith([passed(() => expect(toy.larger?.(4)).toBe(true))])
    expect(await verdictsOf(mutants, strong)).toEqual({
      // What stands in a module since it was loaded is no longer switched: such a mutant is set aside.
      'ArrowFunction: () => undefined': 'survived',
      'ConditionalExpression: true': 'noticed',
      'ConditionalExpression: false': 'noticed',
      'EqualityOperator: given >= 3': 'noticed',
      'EqualityOperator: given <= 3': 'noticed',
    })
    expect(await verdictsOf(mutants, weak)).toMatchObject({
      'ConditionalExpression: true': 'survived',
      'ConditionalExpression: false': 'noticed',
      'EqualityOperator: given >= 3': 'survived',
    })
  })

  it('says so where a test cannot judge, since it does not pass twice', async () => {
    const { mutants, toy } = await broken('export const larger = (given) => given > 3')
    let times = 0
    const once = passed(() => {
      times += 1
      expect(toy.larger?.(4) && times).toBe(1)
    })
    await expect(verdictsOf(mutants, judgeWith([once]))).rejects.toThrow('fails on whole code too')
  })

  it('ends a loop that never ends, and goes on', async () => {
    const { mutants, toy } = await broken(
      'export const halvings = (given) => { let n = 0; while (given > 1) { given /= 2; n += 1 } return n }',
    )
    const judge = judgeWith([passed(() => expect(toy.halvings?.(8)).toBe(3))])
    expect(await verdictsOf(mutants, judge)).toMatchObject({
      'BlockStatement: {}': 'endless',
      'ConditionalExpression: false': 'noticed',
      'EqualityOperator: given >= 1': 'noticed',
      'AssignmentOperator: n -= 1': 'noticed',
    })
  })
})
