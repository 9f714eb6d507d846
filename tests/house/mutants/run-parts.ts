/** Runs the processes that judge, and begins one again that a mutant keeps from ever coming back. */
import { spawn } from 'node:child_process'
import { stuckAt, writeVerdict } from './plan.ts'

/** The judge ends loops by itself, but for one in what a test does after waiting. */
const stuckMs = 120_000
const lookEveryMs = 5_000

export const runParts = async (count: number): Promise<boolean> => {
  const statuses = await Promise.all(Array.from({ length: count }, (_, part) => runPart(part)))
  return statuses.every((status) => status === 0)
}

const runPart = async (part: number): Promise<number> => {
  for (;;) {
    const status = await runOnce(part)
    if (status !== 'stuck') return status
  }
}

const runOnce = (part: number): Promise<number | 'stuck'> =>
  new Promise((resolve) => {
    const judging = spawn(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/house/mutants/vitest.config.ts'],
      {
        // Standard output is for the figures alone.
        stdio: ['ignore', 2, 2],
        detached: true,
        env: { ...process.env, PROPERTY_RUNS: '12', MUTANTS_PART: String(part) },
      },
    )
    let stuck: string | undefined
    const look = setInterval(() => {
      stuck ??= stuckAt(part, stuckMs)
      if (stuck !== undefined && judging.pid !== undefined) process.kill(-judging.pid, 'SIGKILL')
    }, lookEveryMs)
    judging.on('close', (status) => {
      clearInterval(look)
      if (stuck !== undefined) writeVerdict(part, stuck, 'endless')
      resolve(stuck === undefined ? (status ?? 1) : 'stuck')
    })
  })
