import type { Balance, HazardKind, InciPart } from '../catalogue'

/** What is said about a formula before anybody weighs it: a figure, the limit it is held against, and who says so. */
export type FormulaCheck = Common & Said

interface Common {
  /** `stop`: cannot be weighed so. `missing`: data is not there, so nothing can be said. `note`: worth knowing, no more. */
  readonly severity: Severity
  /** The line or step it is about, by id. */
  readonly line?: string
  readonly step?: string
  readonly figure?: Figure
  readonly limit?: Bounds
  readonly source: CheckSource
}

export type Severity = 'stop' | 'warn' | 'note' | 'missing'

/** Shares are fractions of the finished product, masses micrograms, prices in the studio's money. */
export type Unit = 'share' | 'mass' | 'pH' | 'celsius' | 'HLB' | 'price per kg'

export interface Figure {
  readonly value: number
  readonly unit: Unit
}

export interface Bounds {
  readonly min?: number
  readonly max?: number
  readonly unit: Unit
}

export type CheckSource =
  | { readonly kind: 'standard'; readonly name: string }
  | { readonly kind: 'textbook' }
  | { readonly kind: 'first principles' }
  /** What stands in the catalogue of this studio: a material's, a balance's. */
  | { readonly kind: 'own data' }
  | { readonly kind: 'formula' }

/** What was looked at and can be in order, so that this can be said too. */
export type CheckTopic =
  | 'total'
  | 'use levels'
  | 'shared limits'
  | 'preservation'
  | 'pH'
  | 'surfactants'
  | 'thickeners'
  | 'temperature'
  | 'weighing'

/** The data that its sentence needs, by code. `name` is the bench name of a material. */
export type Said =
  | { readonly code: 'TOTAL_OFF' | 'QS_NEGATIVE' | 'QS_TWICE' | 'QS_NONE' | 'LINES_NONE' }
  | { readonly code: 'RANGE_CONTRADICTORY' | 'RANGE_AGAINST_USE' | 'RANGE_EXCLUDES'; readonly name: string }
  | { readonly code: 'MATERIAL_UNKNOWN'; readonly materialId: string }
  | { readonly code: 'USE_OVER' | 'USE_UNDER' | 'USE_MAY_PASS'; readonly name: string }
  | { readonly code: 'SHARED_OVER' | 'SHARED_UNDER'; readonly name: string }
  | { readonly code: 'PRESERVATIVE_NONE' }
  | { readonly code: 'PRESERVATIVE_WEAK' | 'PRESERVATIVE_STRONG'; readonly name: string }
  | { readonly code: 'PRESERVATIVE_ABOVE_LAW'; readonly inci: string; readonly asAcid: boolean }
  | { readonly code: 'PRESERVATIVE_PH_OUT' | 'PRESERVATIVE_PH_PARTLY'; readonly name: string; readonly wanted: Bounds }
  | { readonly code: 'PH_OUT' | 'PH_PARTLY'; readonly name: string; readonly wanted: Bounds }
  | { readonly code: 'PH_NOT_STATED'; readonly names: readonly string[] }
  | { readonly code: 'PH_NOT_READ_AGAIN' }
  | { readonly code: 'ACTIVE_MATTER'; readonly byClass: readonly ActiveShare[] }
  | { readonly code: 'ACTIVE_UNKNOWN'; readonly names: readonly string[] }
  | {
      readonly code: 'ANIONIC_WITH_CATIONIC' | 'ANIONIC_WITH_CATIONIC_POLYMER' | 'ANIONIC_THICKENER_WITH_CATIONIC'
      readonly anionic: string
      readonly cationic: string
    }
  | { readonly code: 'THICKENER_WITH_SALT'; readonly name: string; readonly salts: readonly string[] }
  | { readonly code: 'CARBOMER_NOT_NEUTRALISED' | 'GUM_NOT_HYDRATED'; readonly name: string }
  | { readonly code: 'CARBOMER_BEFORE_PVP'; readonly name: string; readonly film: string }
  | { readonly code: 'ENTERS_TOO_HOT' | 'NEVER_COOLED'; readonly name: string }
  | { readonly code: 'HEATED_ABOVE'; readonly name: string; readonly title: string }
  | { readonly code: 'TOO_SMALL_TO_WEIGH'; readonly name: string; readonly balance: string; readonly tolerance: number }
  | { readonly code: 'TOO_MUCH_TO_WEIGH'; readonly name: string; readonly balance: string }
  | { readonly code: 'BALANCES_NONE' }
  | { readonly code: 'HLB_GUIDE' | 'HLB_APART'; readonly known: number }
  | { readonly code: 'HLB_UNKNOWN'; readonly names: readonly string[] }
  | {
      readonly code: 'HAZARD'
      readonly name: string
      readonly kind: HazardKind
      readonly caution: string
      readonly statements: readonly string[]
      readonly wear: readonly string[]
    }
  | { readonly code: 'ALLERGENS_NAMED'; readonly allergens: readonly InciPart[] }
  | { readonly code: 'ALLERGENS_UNKNOWN'; readonly name: string; readonly allergens: readonly string[] }
  | {
      readonly code: 'COST'
      /** Of all priced lines at the size that was asked about, and of one unit as the procedure fills it. */
      readonly perBatch: number
      readonly perUnit?: number
      readonly unpriced: number
    }
  | { readonly code: 'DATA_MISSING'; readonly what: MissingData; readonly names: readonly string[] }
  | { readonly code: 'INCI_NOT_WHOLE'; readonly name: string }

export type MissingData = 'use level' | 'INCI names' | 'hazards' | 'price' | 'pH window'

export interface ActiveShare {
  readonly class: string
  readonly share: number
}

/** What the house has and what the batch usually weighs. */
export interface CheckContext {
  readonly balances: readonly Balance[]
  /** Where it is not the usual size of the revision. */
  readonly sizeUg?: number
}
