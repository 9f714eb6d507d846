/** Comes after the last test of its process: judges every mutant with what they have left. */
import { test } from 'vitest'
import { judgeWith } from './judge.ts'
import { kept } from './kept.ts'
import { readPlan, readVerdicts, writeFindings, writeVerdict } from './plan.ts'
import { switchboard } from './switchboard.ts'

test('every mutant is judged', async () => {
  switchboard.covered = undefined
  const part = Number(process.env.MUTANTS_PART)
  writeFindings(part, {
    covered: [...new Set(kept.flatMap(({ covers }) => [...covers]))],
    loaded: [...switchboard.loaded],
  })
  const { mutants, parts } = readPlan()
  const others = [...parts.keys()].filter((other) => other !== part)
  const isDecided = (mutant: string): boolean =>
    others.some((other) => ['noticed', 'endless'].includes(readVerdicts(other)(mutant)))
  const judge = judgeWith(kept)
  // From both ends, two processes meet each other's verdicts in the middle.
  for (const { id } of part === 0 ? mutants : [...mutants].reverse()) {
    if (readVerdicts(part)(id) !== 'unasked' || isDecided(id)) continue
    writeVerdict(part, id, 'asked')
    writeVerdict(part, id, await judge(id))
  }
})
