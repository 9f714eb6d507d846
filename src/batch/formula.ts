import type { Amount, Tolerance } from '../trade/amount'
import type { Micrograms } from '../trade/mass'
import type { ActiveClass } from './catalogue'
import type { Step } from './step'

export interface Formula {
  readonly id: string
  readonly code: string
  readonly name: string
  /** What its batches are called on chips: "Lotion" gives "Lotion 041". */
  readonly nickname: string
  readonly contact: 'rinse-off' | 'leave-on'
  readonly revisions: readonly Revision[]
  readonly archived?: boolean
}

/** Immutable once a batch used it. */
export interface Revision {
  readonly number: number
  readonly note?: string
  readonly approvedBy?: string
  readonly approvedAt?: string
  readonly usualSizeUg: Micrograms
  readonly phases: readonly Phase[]
  readonly procedure: readonly Step[]
  readonly specification: readonly Check[]
  readonly vessels: readonly VesselNeed[]
  /** Fraction of the batch that may be lost unexplained. */
  readonly lossAllowance?: number
  readonly restHours?: number
  /** How old a temperature reading may be when something depends on it; 15 min where nothing is stated. */
  readonly readingAgeMinutes?: number
  readonly preflight: readonly string[]
  readonly sharedLimits?: readonly SharedLimit[]
}

export interface Phase {
  readonly letter: string
  readonly name: string
  readonly lines: readonly Line[]
}

export interface Line {
  readonly id: string
  readonly materialId: string
  readonly amount: Amount
  readonly tolerance?: Tolerance
  /** What the formula accepts in the finished product, as fractions. */
  readonly range?: { readonly min: number; readonly max: number }
  /** Must go in after the lines above it in its phase. */
  readonly fixedOrder?: boolean
  /** After this step nothing more of it can go in. */
  readonly locksAfter?: string
  /** The active matter that the fraction was written for. */
  readonly assayAssumed?: number
}

/** One in-process or finished-product check. Limits in the unit of the property. */
export interface Check {
  readonly id: string
  readonly property: Property
  readonly label: string
  readonly unit?: string
  readonly method?: string
  readonly basis?: MeasureBasis
  readonly limits?: { readonly min?: number; readonly max?: number }
  readonly expected?: string
  /** Of what is judged in steps; the usual nine where none is named. */
  readonly scale?: Scale
  readonly when: 'in-process' | 'after-rest'
}

/** A scale of whole steps; what its ends mean is said with every result. */
export interface Scale {
  readonly least: number
  readonly most: number
  readonly low: string
  readonly high: string
}

export type Property =
  | 'pH'
  | 'viscosity'
  | 'density'
  | 'temperature'
  | 'appearance'
  | 'colour'
  | 'odour'
  /** Its height, at once and again after a while. */
  | 'foam'
  | 'centrifuge'
  /** On the skin, in steps of a scale. */
  | 'feel'
  | 'other'

export type MeasureBasis = { readonly kind: 'neat' } | { readonly kind: 'dilution'; readonly fraction: number }

/**
 * A limit over all lines together, as fractions of the finished product: of one INCI constituent, of the active matter
 * of a class, or of all materials of one function (the sum of the preservatives).
 */
export interface SharedLimit {
  readonly id: string
  readonly name: string
  readonly of:
    | { readonly kind: 'inci'; readonly name: string }
    | { readonly kind: 'active'; readonly class: ActiveClass }
    | { readonly kind: 'function'; readonly function: string }
  readonly min?: number
  readonly max?: number
}

/** A vessel the procedure names: `cup` may be emptied again, `vessel` is final. */
export interface VesselNeed {
  readonly id: string
  readonly name: string
  readonly kind: 'vessel' | 'cup'
  /** Room it should have, as a multiple of what goes in. */
  readonly roomFactor?: number
  readonly holds?: string
  readonly openLifeMinutes?: number
}
