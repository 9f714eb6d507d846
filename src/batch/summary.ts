import type { Micrograms } from '../trade/mass'
import type { PullDue } from './stability'

/** What lists show of a batch without reading its log; rebuilt from the log whenever it changes. */
export interface BatchSummary {
  readonly id: string
  readonly code: string
  readonly shortName: string
  readonly formulaId: string
  readonly formulaName: string
  readonly revision: number
  readonly totalUg: Micrograms
  readonly stage: 'in-hand' | 'parked' | 'closed' | 'abandoned'
  readonly openedAtMs: number
  readonly touchedAtMs: number
  readonly closedAtMs?: number
  readonly person: string
  readonly decision?: string
  /** What to do next, in words, and the step it belongs to. */
  readonly next?: { readonly step: string; readonly phase: string; readonly text: string; readonly place: string }
  readonly done: number
  readonly steps: number
  /** Contents by phase of the fullest vessel, for the cup on the bench. */
  readonly cup: {
    readonly strata: readonly { readonly letter: string; readonly massUg: Micrograms }[]
    readonly targetUg: Micrograms
  }
  readonly timers: readonly { readonly id: string; readonly label: string; readonly deadlineAtMs: number }[]
  readonly checksDue: readonly { readonly check: string; readonly label: string; readonly dueAtMs: number }[]
  /** Jars that are still to be pulled, the first first; absent where there are none. */
  readonly pulls?: readonly PullDue[]
  /** When balances were found good with a reference mass in this batch. */
  readonly balanceChecks?: readonly { readonly balance: string; readonly atMs: number }[]
  readonly openDeviations: number
  readonly deviations: number
  readonly doubts: number
  /** Results after the rest that stand outside their limits; absent where there are none. */
  readonly outOfLimits?: number
  /** How often it was reworked; absent where it never was. */
  readonly reworks?: number
  /** Unexplained mass beyond what the formula lets pass; absent where there is none. */
  readonly unexplainedUg?: Micrograms
  readonly usedByLot: readonly { readonly lot: string; readonly massUg: Micrograms }[]
}

/** On the bench: open, or put aside for a while. */
export const isInHand = ({ stage }: BatchSummary): boolean => stage === 'in-hand' || stage === 'parked'
