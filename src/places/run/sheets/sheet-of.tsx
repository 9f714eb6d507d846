import { useEffect, useState } from 'preact/hooks'
import { useRun } from '../run-context'

type SheetsModule = typeof import('./sheets')

export const warmSheets = (): Promise<SheetsModule> => import('./sheets')

/** The page over the run, if one is open; its code comes after the first screen. */
export function SheetOf() {
  const run = useRun()
  const [module, setModule] = useState<SheetsModule | null>(null)
  const open = run.sheet.value
  useEffect(() => {
    if (open !== null) void warmSheets().then(setModule)
  }, [open])
  if (open === null || module === null) return null
  return (
    <module.SheetFor key={`${open.name}:${open.about ?? ''}`} open={open} onClose={() => (run.sheet.value = null)} />
  )
}
