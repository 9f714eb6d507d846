import type { KeptTest } from './judge.ts'

/** What the test files of this process have left for the judge, which is loaded beside them. */
export const kept: KeptTest[] = []

export const keep = (test: KeptTest): void => {
  kept.push(test)
}
