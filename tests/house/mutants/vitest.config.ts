import { relative } from 'node:path'
import { defineConfig } from 'vitest/config'
import { readPlan } from './plan.ts'

const plan = readPlan()
const last = 'tests/house/mutants/last.ts'

/** The tests of one process, on broken code, all in one world: what they leave is judged with after the last of them. */
export default defineConfig({
  root: process.cwd(),
  plugins: [
    {
      name: 'broken-code',
      enforce: 'pre',
      load: (id) => plan.files[relative(process.cwd(), id)],
      // What a module has worked out for good must not outlive the mutant it was worked out with.
      transform: {
        filter: { id: /\/src\/(trade|batch)\// },
        handler: (code) =>
          code.replace(/^(const \w+ = )new (?:Weak)?Map<.*>\(\)/gm, '$1globalThis.mutantSwitchboard.newCache()'),
      },
    },
  ],
  test: {
    include: [...(plan.parts[Number(process.env.MUTANTS_PART)] ?? []), last],
    setupFiles: ['tests/house/mutants/note.ts'],
    isolate: false,
    maxWorkers: 1,
    // With a limit of their own tests would come back before they are over; the judge has one.
    testTimeout: 0,
    hookTimeout: 0,
    // A mutant may break a promise that nobody waits for any more.
    dangerouslyIgnoreUnhandledErrors: true,
    silent: 'passed-only',
    reporters: ['dot'],
    sequence: {
      sequencer: class {
        async sort<T extends { readonly moduleId: string }>(files: T[]): Promise<T[]> {
          return files.sort((one, other) => Number(one.moduleId.endsWith(last)) - Number(other.moduleId.endsWith(last)))
        }
        async shard<T>(files: T[]): Promise<T[]> {
          return files
        }
      },
    },
  },
})
