import type { Lot } from '../../src/batch/catalogue'
import type { Formula, Line } from '../../src/batch/formula'
import type { BatchHeader, BatchVessel, WeighMode } from '../../src/batch/header'
import type { Plan } from '../../src/batch/plan'
import { planBatch } from '../../src/batch/plan-batch'
import type { Step } from '../../src/batch/step'
import { demonstrationCatalogue } from '../house/demonstration/catalogue'
import { headerOf, newestOf } from '../house/demonstration/header'
import { grams } from './batch'

const [lotion, conditioner, gel, shampoo] = demonstrationCatalogue.formulas

/** The four demonstration formulas. */
export const formulas = { lotion, conditioner, gel, shampoo } as const

export interface Wishes {
  readonly size?: string
  readonly mode?: WeighMode
}

/** A batch header over a demonstration formula, with the lots, balances and people of 24 November 2026. */
export const headerFor = (formula: Formula, { size = '500', mode = 'as-you-go' }: Wishes = {}): BatchHeader =>
  headerOf(formula, { id: 'one', number: 41, sizeUg: grams(size), mode, on: '2026-11-24' })

export const lotionHeader = (wishes: Wishes = {}): BatchHeader => headerFor(lotion, wishes)

/** The same header with its procedure, or its lines, changed. */
export function withSteps(header: BatchHeader, change: (step: Step) => Step | readonly Step[]): BatchHeader {
  const procedure = header.revision.procedure.flatMap((step) => change(step))
  return { ...header, revision: { ...header.revision, procedure } }
}

export function withLines(header: BatchHeader, change: (line: Line) => Line): BatchHeader {
  const phases = header.revision.phases.map((phase) => ({ ...phase, lines: phase.lines.map(change) }))
  return { ...header, revision: { ...header.revision, phases } }
}

export const withVessels = (header: BatchHeader, change: (vessel: BatchVessel) => BatchVessel): BatchHeader => ({
  ...header,
  vessels: header.vessels.map(change),
})

/** The same header with these lots for one line, in order of use. */
export function withLots(
  header: BatchHeader,
  line: string,
  change: (lots: readonly Lot[]) => readonly Lot[],
): BatchHeader {
  const lots = header.lots.map((each) => (each.line === line ? { line, lots: change(each.lots) } : each))
  return { ...header, lots }
}

export function planOf(header: BatchHeader): Plan {
  const plan = planBatch(header)
  if (!plan.ok) throw new Error(`not planned: ${plan.refusal.code}`)
  return plan.value
}

export const newest = newestOf
