import { defineConfig } from 'vitest/config'

/** The tests that are to notice a broken sum or a broken rule. */
export default defineConfig({
  root: process.cwd(),
  test: {
    setupFiles: ['tests/house/same-cases.ts'],
    include: ['tests/unit/{trade,batch}/**/*.test.ts', 'tests/property/**/*.test.ts', 'tests/vectors/**/*.test.ts'],
  },
})
