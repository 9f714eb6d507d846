import { massIn } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import { foldBatch, foldEntry } from './fold'
import { msOf } from './instant'
import { type BatchEvent, isKnown } from './kinds'
import type { PlannedStep } from './plan'
import { isDone } from './progress'
import { vesselName } from './record-materials'
import type { BatchState } from './state'

/** What a stage of the batch should have come to, and what it came to by the books. */
export interface StageRow {
  readonly kind: 'weighed' | 'moved' | 'made up' | 'filled'
  /** The letter of a phase that was weighed, else the vessel, with where it went. */
  readonly of: string
  readonly into?: string
  readonly atMs: number
  /** Of a phase: its targets. Of a move or a filling: all that stood in the vessels. Made up: the batch as planned. */
  readonly theoreticalUg: Micrograms
  readonly actualUg: Micrograms
}

/** Yield at each stage, in the order of the log: phases weighed, vessels emptied into others, made up, filled. */
export function stageRows(state: BatchState): readonly StageRow[] {
  return [...phaseStages(state), ...movedStages(state)].sort((a, b) => a.atMs - b.atMs)
}

/** A phase is weighed with its last weighing; what is not done yet has no yield. */
function phaseStages(state: BatchState): readonly StageRow[] {
  const letters = new Set(state.plan.steps.flatMap((planned) => phaseWeighed(planned) ?? []))
  return [...letters].flatMap((letter): readonly StageRow[] => {
    const own = state.plan.steps.filter((planned) => phaseWeighed(planned) === letter)
    const steps = own.flatMap(({ id }) => state.steps.get(id) ?? [])
    const weighings = steps.flatMap((step) => step.weighings)
    if (weighings.length === 0 || !own.every(({ id }) => isDone(state, id))) return []
    return [
      {
        kind: 'weighed',
        of: letter,
        atMs: Math.max(...weighings.map(({ at, occurredAt }) => msOf(occurredAt ?? at))),
        theoreticalUg: steps.reduce((sum, { targets }) => sum + (targets.at(-1) ?? 0), 0),
        actualUg: steps.reduce((sum, { netUg }) => sum + netUg, 0),
      },
    ]
  })
}

/** The phase that a weighing is of; of what a rework adds, the rework. */
const phaseWeighed = ({ step, line, part }: PlannedStep): string | undefined => {
  if (step.kind !== 'weigh' || !line) return undefined
  return part === undefined ? line.phase : step.phase
}

/** Replays the log once: what stood in a vessel at a stage is nowhere written down. */
function movedStages(state: BatchState): readonly StageRow[] {
  const counting = state.entries.flatMap(({ event, struck }) => (struck || event.kind === 'struck' ? [] : [event]))
  const opening = counting.findIndex(({ kind }) => kind === 'opened')
  const then = foldBatch(counting.slice(0, opening + 1))
  const rows: StageRow[] = []
  for (const event of counting.slice(opening + 1)) {
    const beforeUg = isKnown(event) ? standsBefore(then, event) : 0
    foldEntry(then, event, new Map())
    const row = isKnown(event) ? stageAfter(then, event, beforeUg) : null
    if (row) rows.push({ ...row, atMs: msOf(event.occurredAt ?? event.at) })
  }
  return rows
}

function standsBefore(then: BatchState, event: BatchEvent): Micrograms {
  switch (event.kind) {
    case 'charged':
    case 'transferred': {
      const { from, to, rinseUg } = event.body
      return massIn(then.ledger, from) + massIn(then.ledger, to) + rinseUg
    }
    case 'filled':
      return massIn(then.ledger, event.body.vessel)
    default:
      return 0
  }
}

function stageAfter(then: BatchState, event: BatchEvent, beforeUg: Micrograms): Omit<StageRow, 'atMs'> | null {
  switch (event.kind) {
    case 'charged':
    case 'transferred': {
      const { from, to, residueUg } = event.body
      // A cup that was tipped out whole is no stage of its own.
      if (event.kind === 'charged' && residueUg === 0) return null
      const [of, into] = [vesselName(then, from), vesselName(then, to)]
      return { kind: 'moved', of, into, theoreticalUg: beforeUg, actualUg: massIn(then.ledger, to) }
    }
    case 'made-up': {
      const { vessel } = event.body
      const actualUg = massIn(then.ledger, vessel)
      return { kind: 'made up', of: vesselName(then, vessel), theoreticalUg: then.totalUg, actualUg }
    }
    case 'filled': {
      const actualUg = beforeUg - massIn(then.ledger, event.body.vessel)
      return { kind: 'filled', of: vesselName(then, event.body.vessel), theoreticalUg: beforeUg, actualUg }
    }
    default:
      return null
  }
}
