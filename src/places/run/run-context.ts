import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { RunModel } from './run-model'

const RunContext = createContext<RunModel | null>(null)

export const RunProvider = RunContext.Provider

/** The batch on the screen. Throws where a card stands outside of the run: a mistake of ours. */
export function useRun(): RunModel {
  const run = useContext(RunContext)
  if (run === null) throw new Error('useRun outside of RunProvider')
  return run
}
