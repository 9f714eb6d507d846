import type { Micrograms } from '../trade/mass'
import type { Balance, Lot } from './catalogue'
import type { PremixRecipe } from './premix-recipe'
import type { RangeFault } from './range-faults'

/**
 * What stands in the way of a batch before it is opened. `about` is the line or vessel it concerns; with `code` it
 * names the finding in `header.kept`, once a person keeps it with a reason.
 */
export type Finding = LotFinding | BalanceFinding | VesselFinding | StirrerFinding | RangeFault | QsFinding

export type LotFinding =
  | { readonly code: 'LOT_EXPIRED'; readonly about: string; readonly lot: Lot; readonly daysOver: number }
  | { readonly code: 'LOT_RETEST'; readonly about: string; readonly lot: Lot; readonly daysOver: number }
  | { readonly code: 'LOT_QUARANTINED'; readonly about: string; readonly lot: Lot }
  | { readonly code: 'LOT_SHORT'; readonly about: string; readonly neededUg: Micrograms; readonly leftUg: Micrograms }
  | { readonly code: 'NO_LOT'; readonly about: string }

export type BalanceFinding =
  | {
      readonly code: 'TOO_SMALL'
      readonly about: string
      readonly targetUg: Micrograms
      readonly tolerance: number
      readonly balance: Balance
      readonly goodFromUg: number
      /** The coarsest other balance that weighs it well enough. */
      readonly finer: { readonly balance: Balance; readonly goodFromUg: number } | null
      /** The batch size from which this balance would do. */
      readonly sizeUg: Micrograms
      /** Dilutions of which more is weighed, the likeliest first. */
      readonly premixes: readonly PremixRecipe[]
    }
  | { readonly code: 'FAIRLY_SMALL'; readonly about: string; readonly targetUg: Micrograms }
  | { readonly code: 'OVER_BALANCE'; readonly about: string; readonly balance: Balance; readonly targetUg: Micrograms }

export interface VesselFinding {
  readonly code: 'VESSEL_SMALL'
  readonly about: string
  /** The most that will be in it, and with the room that the formula asks for. */
  readonly peakUg: Micrograms
  readonly neededUg: Micrograms
  readonly capacityUg: Micrograms
}

/** What is stirred in the vessel in the end is less, or more, than its stirrer keeps moving. */
export interface StirrerFinding {
  readonly code: 'STIRRER_RANGE'
  readonly about: string
  readonly peakUg: Micrograms
  readonly stirsUg: { readonly min: Micrograms; readonly max: Micrograms }
}

/** Nothing can give way after a slip: q.s. is weighed whole, or there is none (`about` is empty then). */
export interface QsFinding {
  readonly code: 'NOTHING_HELD_BACK' | 'NO_QS'
  readonly about: string
}
