import type { Micrograms } from '../trade/mass'
import type { Disposition } from './kinds'
import { entriesOf, type Stamp } from './record-entries'
import { vesselName } from './record-materials'
import { type StepRow, stepRows } from './record-steps'
import type { BatchState } from './state'

/** One rework of a batch, under a heading of its own. */
export interface ReworkRecord extends Stamp {
  readonly part: number
  readonly reason: string
  readonly returned?: { readonly vessel: string; readonly massUg: Micrograms }
  readonly steps: readonly StepRow[]
  /** What went in, in order. */
  readonly additions: readonly (Stamp & {
    readonly step: string
    readonly name: string
    readonly netUg: Micrograms
    readonly targetUg?: Micrograms
    readonly lot?: string
    readonly struck: boolean
  })[]
}

export type DecisionRow = Stamp & { readonly decision: Disposition; readonly note?: string }

type Initials = (id: string) => string

export function reworkRecords(
  state: BatchState,
  initialsOf: Initials,
  lotCodes: ReadonlyMap<string, string>,
): readonly ReworkRecord[] {
  const rows = stepRows(state, initialsOf)
  return entriesOf(state, 'reworked', initialsOf).map(({ event, struck: _never, ...stamp }) => {
    const { part, reason, returned, steps } = event.body
    const ids = new Set(steps.map(({ id }) => id))
    return {
      ...stamp,
      part,
      reason,
      ...(returned ? { returned: { vessel: vesselName(state, returned.vessel), massUg: returned.massUg } } : {}),
      steps: rows.filter(({ planned }) => ids.has(planned.id)),
      additions: additionsOf(state, ids, initialsOf, lotCodes),
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

function additionsOf(
  state: BatchState,
  steps: ReadonlySet<string>,
  initialsOf: Initials,
  lotCodes: ReadonlyMap<string, string>,
): ReworkRecord['additions'] {
  const lotOf = (lot: string | undefined) => (lot === undefined ? {} : { lot: lotCodes.get(lot) ?? lot })
  const targetOf = (id: string) => {
    const step = state.plan.byId.get(id)?.step
    return step?.kind === 'add' ? { targetUg: step.massUg } : {}
  }
  const adjusted = entriesOf(state, 'adjusted', initialsOf).map(({ event, struck, ...stamp }) => ({
    ...stamp,
    step: event.body.step,
    name: state.plan.lines.get(event.body.line)?.material.name ?? event.body.line,
    netUg: event.body.netUg,
    struck: struck !== undefined,
    ...targetOf(event.body.step),
    ...lotOf(event.body.lot),
  }))
  const others = entriesOf(state, 'unplanned-added', initialsOf).map(({ event, struck, ...stamp }) => ({
    ...stamp,
    step: event.body.step ?? '',
    name: event.body.name,
    netUg: event.body.netUg,
    struck: struck !== undefined,
    ...targetOf(event.body.step ?? ''),
    ...lotOf(event.body.lot),
  }))
  return [...adjusted, ...others].filter(({ step }) => steps.has(step)).sort((a, b) => a.atMs - b.atMs)
}
