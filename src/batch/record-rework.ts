import type { Micrograms } from '../trade/mass'
import type { Disposition } from './kinds'
import { entriesOf, type Stamp } from './record-entries'
import { type MaterialRow, materialRows, vesselName } from './record-materials'
import { type StepRow, stepRows } from './record-steps'
import type { BatchState } from './state'

/** One rework of a batch, under a heading of its own. */
export interface ReworkRecord extends Stamp {
  readonly part: number
  readonly reason: string
  readonly returned?: { readonly vessel: string; readonly massUg: Micrograms }
  readonly steps: readonly StepRow[]
  /** What it added, line by line. */
  readonly materials: readonly MaterialRow[]
}

export type DecisionRow = Stamp & { readonly decision: Disposition; readonly note?: string }

type Initials = (id: string) => string

export function reworkRecords(state: BatchState, initialsOf: Initials): readonly ReworkRecord[] {
  const rows = stepRows(state, initialsOf)
  return entriesOf(state, 'reworked', initialsOf).map(({ event, struck: _never, ...stamp }) => {
    const { part, reason, returned } = event.body
    return {
      ...stamp,
      part,
      reason,
      ...(returned ? { returned: { vessel: vesselName(state, returned.vessel), massUg: returned.massUg } } : {}),
      steps: rows.filter(({ planned }) => planned.part === part),
      materials: materialRows(state, initialsOf, part),
    }
  })
}

/** Every decision about the batch, the first one first. */
export const decisionsOf = (state: BatchState, initialsOf: Initials): readonly DecisionRow[] =>
  entriesOf(state, 'closed', initialsOf).map(({ event, struck: _never, ...stamp }) => ({
    ...stamp,
    decision: event.body.decision,
    ...(event.body.note === undefined ? {} : { note: event.body.note }),
  }))

/** The rework after which an entry was written, by its id; 0 before any. */
export function partsByEntry(state: BatchState): (entry: string) => number {
  if (state.parts.length === 0) return () => 0
  const parts = new Map<string, number>()
  let part = 0
  for (const { event } of state.entries) {
    if (event.kind === 'reworked') part += 1
    parts.set(event.id, part)
  }
  return (entry) => parts.get(entry) ?? 0
}
