/** What the processes of one run share in files: the broken code, who has which tests, and what is decided so far. */
import { closeSync, mkdirSync, openSync, readFileSync, rmSync, statSync, writeFileSync, writeSync } from 'node:fs'
import type { BrokenCode } from './choose.ts'
import type { Verdict } from './judge.ts'

const folder = '.cache/mutants'
const planFile = `${folder}/plan.json`
const verdictsFile = (part: number): string => `${folder}/verdicts-${part}`
const findingsFile = (part: number): string => `${folder}/findings-${part}.json`

export interface Plan extends BrokenCode {
  /** The test files of each process. */
  readonly parts: readonly (readonly string[])[]
}

/** What the tests of one process ran through, and what ran when their modules were loaded. */
export interface Findings {
  readonly covered: readonly string[]
  readonly loaded: readonly string[]
}

export const makePlan = (plan: Plan): void => {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  writeFileSync(planFile, JSON.stringify(plan))
  const ids = plan.mutants.map(({ id }) => Number(id))
  for (const part of plan.parts.keys()) writeFileSync(verdictsFile(part), Buffer.alloc(1 + Math.max(...ids)))
}

export const readPlan = (): Plan => JSON.parse(readFileSync(planFile, 'utf8')) as Plan

export const writeFindings = (part: number, findings: Findings): void =>
  writeFileSync(findingsFile(part), JSON.stringify(findings))

export const readFindings = (part: number): Findings => JSON.parse(readFileSync(findingsFile(part), 'utf8')) as Findings

/** A byte a mutant, so that a process that has to be ended leaves all it knew, and which one it was at. */
const states = ['unasked', 'asked', 'survived', 'noticed', 'endless'] as const
type State = (typeof states)[number] & (Verdict | 'unasked' | 'asked')

export const readVerdicts = (part: number): ((mutant: string) => State) => {
  const bytes = readFileSync(verdictsFile(part))
  return (mutant) => states[bytes[Number(mutant)] ?? 0] ?? 'unasked'
}

export const writeVerdict = (part: number, mutant: string, state: State): void => {
  const file = openSync(verdictsFile(part), 'r+')
  writeSync(file, Buffer.of(states.indexOf(state)), 0, 1, Number(mutant))
  closeSync(file)
}

/** The mutant that a process has been at for so long. */
export const stuckAt = (part: number, forMs: number): string | undefined => {
  if (Date.now() - statSync(verdictsFile(part)).mtimeMs < forMs) return undefined
  const mutant = readFileSync(verdictsFile(part)).indexOf(states.indexOf('asked'))
  return mutant === -1 ? undefined : String(mutant)
}
