import { type Reconciliation, reconcile } from '../trade/composition'
import type { Micrograms } from '../trade/mass'
import { entriesOf, type Stamp, type Struck } from './record-entries'
import { vesselName } from './record-materials'
import type { BatchState } from './state'

/** Where all the mass went, and the entries that say so. */
export interface MassRecord {
  readonly makeUps: readonly (Stamp & {
    readonly netUg: Micrograms
    readonly grossUg?: Micrograms
    readonly struck?: Struck
  })[]
  readonly samples: readonly (Stamp & {
    readonly massUg: Micrograms
    readonly jars: number
    readonly purpose: string
    readonly struck?: Struck
  })[]
  readonly fills: readonly (Stamp & { readonly massUg: Micrograms; readonly units: number; readonly struck?: Struck })[]
  /** Evaporated, spilled, discarded: what was lost on the way and why. */
  readonly losses: readonly (Stamp & {
    readonly what: 'evaporated' | 'spilled' | 'discarded'
    readonly vessel: string
    readonly massUg: Micrograms | 'all'
    readonly why: string
    readonly struck?: Struck
  })[]
  readonly reconciliation: Reconciliation
  /** Filled and sampled ÷ made (put in less evaporated and discarded); 0 before anything is made. */
  readonly yieldFraction: number
  readonly madeUg: Micrograms
  /** In the vessels by the books after filling: what nobody has accounted for. Null before anything was filled. */
  readonly unexplainedUg: Micrograms | null
  readonly unexplainedLimitUg: Micrograms | null
}

type Initials = (id: string) => string

export function massRecord(state: BatchState, initialsOf: Initials): MassRecord {
  const reconciliation = reconcile(state.ledger, state.totalUg)
  const { addedUg, evaporatedUg, discardedUg, filledUg, sampledUg, inVesselsUg } = reconciliation
  const madeUg = addedUg - evaporatedUg - discardedUg
  const allowance = state.header.revision.lossAllowance
  return {
    makeUps: entriesOf(state, 'made-up', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      netUg: event.body.netUg,
      ...(event.body.grossUg === undefined ? {} : { grossUg: event.body.grossUg }),
    })),
    samples: entriesOf(state, 'sampled', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      massUg: event.body.massUg,
      jars: event.body.jars,
      purpose: event.body.purpose,
    })),
    fills: entriesOf(state, 'filled', initialsOf).map(({ event, ...stamp }) => ({
      ...stamp,
      massUg: event.body.massUg,
      units: event.body.units,
    })),
    losses: lossesOf(state, initialsOf),
    reconciliation,
    madeUg,
    yieldFraction: madeUg > 0 ? (filledUg + sampledUg) / madeUg : 0,
    unexplainedUg: filledUg > 0 ? inVesselsUg : null,
    unexplainedLimitUg: allowance === undefined ? null : Math.round(allowance * state.totalUg),
  }
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
