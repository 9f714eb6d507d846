/** The `test` and `expect` of every browser test: no test passes whose app asked another origin, broke the policy or threw. */
import { test as base, expect } from '@playwright/test'
import { watchContext } from './guard.ts'

export { expect }

export const test = base.extend<{ guard: string[] }>({
  guard: [
    async ({ context, baseURL }, use) => {
      const wrongs = watchContext(context, new URL(baseURL ?? '').origin)
      await use(wrongs)
      expect(wrongs).toEqual([])
    },
    { auto: true },
  ],
})
