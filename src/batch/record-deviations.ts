import type { Micrograms } from '../trade/mass'
import { consequencesOf, type FinishedRow } from './deviation'
import { foldBatch } from './fold'
import type { DeviationCause, RemedyKind } from './kinds'
import { entriesOf, type Stamp } from './record-entries'
import type { BatchState } from './state'

/** What went beyond its band, what it would have led to, and the way on that was chosen. */
export interface DeviationRecord extends Stamp {
  readonly number: number
  readonly id: string
  readonly line: string
  readonly name: string
  readonly direction: 'over' | 'under'
  readonly byUg: Micrograms
  readonly inCup: boolean
  readonly cause?: DeviationCause
  readonly stepUg: Micrograms
  readonly weighing: { readonly netUg: Micrograms; readonly targetUg: Micrograms } | null
  /** The finished product as it would have ended, as known at the moment of the reading. */
  readonly consequence: { readonly finishedUg: Micrograms; readonly rows: readonly FinishedRow[] } | null
  readonly settled: {
    readonly how: RemedyKind | 'taken out' | 'struck out'
    readonly reason: string
    readonly atMs: number
    readonly by: string
    /** Of a remedy that changed the plan. */
    readonly totalUg?: Micrograms
    readonly changed: number
  } | null
}

type Initials = (id: string) => string

export function deviationRecords(state: BatchState, initialsOf: Initials): readonly DeviationRecord[] {
  const remedies = entriesOf(state, 'remedy-chosen', initialsOf)
  return entriesOf(state, 'deviation-noticed', initialsOf).flatMap(({ event, struck: _never, ...stamp }, index) => {
    const { deviation: id, entry, line, direction, byUg, inCup, cause } = event.body
    const planned = state.plan.lines.get(line)
    const settled = state.deviations.get(id)?.settled
    const remedy = remedies.findLast((each) => !each.struck && each.event.body.deviation === id)?.event.body
    return [
      {
        ...stamp,
        number: index + 1,
        id,
        line,
        direction,
        byUg,
        inCup,
        ...(cause === undefined ? {} : { cause }),
        name: planned?.material.name ?? state.unplanned.get(line)?.body.name ?? line,
        stepUg: planned?.balance.stepUg ?? 1,
        weighing: weighingOf(state, entry, initialsOf),
        consequence: consequenceThen(state, event.id, id),
        settled: settled
          ? {
              ...settled,
              by: initialsOf(settled.by),
              changed: remedy?.targets.length ?? 0,
              ...(remedy === undefined ? {} : { totalUg: remedy.totalUg }),
            }
          : null,
      },
    ]
  })
}

function weighingOf(state: BatchState, entry: string, initialsOf: Initials): DeviationRecord['weighing'] {
  const found = entriesOf(state, 'weighed', initialsOf).find(({ event }) => event.id === entry)
  return found ? { netUg: found.event.body.netUg, targetUg: found.event.body.targetUg } : null
}

/** Folds the log up to the deviation again: later entries must not colour what was known then. */
function consequenceThen(state: BatchState, entry: string, id: string): DeviationRecord['consequence'] {
  const upTo = state.entries.findIndex(({ event }) => event.id === entry)
  const then = foldBatch(state.entries.slice(0, upTo + 1).map(({ event }) => event))
  const found = consequencesOf(then, id)
  return found && found.rows.length > 0 ? found : null
}
