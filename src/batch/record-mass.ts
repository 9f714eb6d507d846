import type { Reconciliation } from '../trade/composition'
import type { Micrograms } from '../trade/mass'
import type { Bodies } from './kinds'
import { lossCheckOf } from './reconciliation'
import { entriesOf, type Stamp, type Struck } from './record-entries'
import { vesselName } from './record-materials'
import type { BatchState } from './state'

/** Where all the mass went, and the entries that say so. */
export interface MassRecord {
  readonly makeUps: readonly (Stamp & {
    readonly netUg: Micrograms
    readonly grossUg?: Micrograms
    /** What the reading was above the books, gone on with for a reason. */
    readonly aboveUg?: Micrograms
    readonly struck?: Struck
  })[]
  readonly samples: readonly (Stamp & {
    readonly vessel: string
    readonly massUg: Micrograms
    readonly jars: number
    readonly purpose: string
    readonly struck?: Struck
  })[]
  readonly fills: readonly (Stamp & {
    readonly massUg: Micrograms
    readonly units: number
    /** What the vessel got lighter by, where it was read before and after. */
    readonly lighterUg?: Micrograms
    readonly struck?: Struck
  })[]
  /** Evaporated, spilled, discarded: what was lost on the way and why. */
  readonly losses: readonly (Stamp & {
    readonly what: 'evaporated' | 'spilled' | 'discarded'
    readonly vessel: string
    readonly massUg: Micrograms | 'all'
    readonly why: string
    readonly struck?: Struck
  })[]
  readonly reconciliation: Reconciliation
  /** In the vessels by the books after filling, and not read there. Null before anything was filled. */
  readonly unexplainedUg: Micrograms | null
  readonly unexplainedLimitUg: Micrograms | null
  /** More is unexplained than the formula lets pass. */
  readonly isFlagged: boolean
}

type Initials = (id: string) => string

export function massRecord(state: BatchState, initialsOf: Initials): MassRecord {
  const { sums: reconciliation, limitUg, isFlagged } = lossCheckOf(state)
  return {
    makeUps: entriesOf(state, 'made-up', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      netUg: event.body.netUg,
      ...(event.body.grossUg === undefined ? {} : { grossUg: event.body.grossUg }),
      ...(event.body.aboveUg === undefined ? {} : { aboveUg: event.body.aboveUg }),
    })),
    samples: entriesOf(state, 'sampled', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      vessel: vesselName(state, event.body.vessel),
      massUg: event.body.massUg,
      jars: event.body.jars,
      purpose: event.body.purpose,
    })),
    fills: entriesOf(state, 'filled', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      massUg: event.body.massUg,
      units: event.body.units,
      ...lighterOf(event.body),
    })),
    losses: lossesOf(state, initialsOf),
    reconciliation,
    unexplainedUg: reconciliation.unexplainedUg,
    unexplainedLimitUg: limitUg,
    isFlagged,
  }
}

function lighterOf({ grossBeforeUg, grossAfterUg }: Bodies['filled']): { readonly lighterUg?: Micrograms } {
  return grossBeforeUg === undefined || grossAfterUg === undefined ? {} : { lighterUg: grossBeforeUg - grossAfterUg }
}

function lossesOf(state: BatchState, initialsOf: Initials): MassRecord['losses'] {
  const name = (id: string): string => vesselName(state, id)
  return [
    ...entriesOf(state, 'evaporated', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      what: 'evaporated' as const,
      vessel: name(event.body.vessel),
      massUg: event.body.massUg,
      why: event.body.seenBy,
    })),
    ...entriesOf(state, 'spilled', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      what: 'spilled' as const,
      vessel: name(event.body.vessel),
      massUg: event.body.massUg,
      why: event.body.reason,
    })),
    ...entriesOf(state, 'discarded', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      what: 'discarded' as const,
      vessel: name(event.body.vessel),
      massUg: event.body.massUg,
      why: event.body.reason,
    })),
  ].sort((a, b) => a.atMs - b.atMs)
}
