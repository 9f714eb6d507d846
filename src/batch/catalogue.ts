import type { Micrograms } from '../trade/mass'

/** What stands in the catalogue beside formulas. Masses µg, temperatures °C, fractions 0–1, density g/mL, dates ISO. */
export interface Material {
  readonly id: string
  /** The short bench name; INCI names stand in `inci`. */
  readonly name: string
  readonly inci: readonly InciPart[]
  readonly function: string
  readonly form?: MaterialForm
  readonly densityGPerMl?: number
  readonly activeMatter?: { readonly fraction: number; readonly class: ActiveClass }
  readonly useLevel?: { readonly min: number; readonly max: number }
  readonly phWindow?: { readonly min: number; readonly max: number }
  readonly maxTemperatureC?: number
  readonly volatile?: boolean
  readonly hazards?: Hazards
  readonly costPerKg?: number
  /** At or below this much that may be used, more is to be ordered. */
  readonly reorderAtUg?: Micrograms
  readonly allergens?: readonly string[]
  /** How much of each allergen is in it, where its supplier's sheet says so. */
  readonly allergenParts?: readonly InciPart[]
  /** Of an emulsifier: its hydrophile-lipophile balance, 0–20 (40 for soaps). */
  readonly hlb?: number
  /** Of an oil: the balance that an oil-in-water emulsion of it wants. */
  readonly requiredHlb?: number
  /** Came with a formula from a spreadsheet: its data is still to be filled in. */
  readonly draft?: boolean
  readonly archived?: boolean
}

export interface InciPart {
  readonly name: string
  readonly fraction: number
}

export type MaterialForm = 'liquid' | 'powder' | 'solid' | 'paste' | 'solution'
export type ActiveClass = 'anionic' | 'amphoteric' | 'non-ionic' | 'cationic surfactant' | 'cationic polymer'

/** As the user's own safety data sheet states them. `caution` is the one line shown where the weighing happens. */
export interface Hazards {
  readonly caution: string
  readonly kind: HazardKind
  readonly statements: readonly string[]
  readonly wear: readonly string[]
}

export type HazardKind = 'dust' | 'caustic' | 'acid' | 'hot' | 'flammable' | 'sensitiser' | 'slippery' | 'other'

export interface Lot {
  readonly id: string
  readonly materialId: string
  readonly code: string
  readonly supplier?: string
  readonly receivedUg: Micrograms
  readonly receivedOn?: string
  /** The last day it may be used, ISO date. */
  readonly expires?: string
  /** The last day before it is to be tested again, ISO date. */
  readonly retestOn?: string
  /** Active matter of this lot as its certificate states it, 0–1. */
  readonly assay?: number
  readonly status: 'released' | 'quarantine' | 'used-up'
  readonly adjustments?: readonly StockAdjustment[]
  /** Of a pre-mix made for one batch: what it was made of. It stands in no store. */
  readonly madeFrom?: readonly { readonly lot: string; readonly massUg: Micrograms }[]
}

export interface StockAdjustment {
  readonly at: string
  readonly massUg: Micrograms
  readonly reason: string
  readonly by: string
}

export interface Balance {
  readonly id: string
  readonly name: string
  /** Readability d. */
  readonly stepUg: Micrograms
  readonly capacityUg: Micrograms
  /** Repeatability s, a standard deviation. */
  readonly repeatabilityUg: Micrograms
  readonly linearityUg?: Micrograms
  readonly checkEveryHours?: number
  readonly archived?: boolean
}

export interface Person {
  readonly id: string
  readonly initials: string
  readonly name: string
  readonly archived?: boolean
}

/** A vessel of the house: a beaker or cup one owns, with what it weighs empty. */
export interface KeptVessel {
  readonly id: string
  readonly name: string
  readonly tareUg?: Micrograms
  readonly capacityUg: Micrograms
  /** What the stirrer that belongs to it keeps moving: less it does not reach, more it does not turn over. */
  readonly stirsUg?: { readonly min: Micrograms; readonly max: Micrograms }
  readonly archived?: boolean
}
