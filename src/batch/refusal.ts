import type { LedgerRefusal } from '../trade/ledger'
import type { Micrograms } from '../trade/mass'
import type { Result } from '../trade/result'
import type { WeighingRefusal } from '../trade/weighing'
import type { Gate } from './gate'
import type { Checked } from './intention'
import type { BatchDraft } from './kinds'
import type { PlanRefusal } from './plan-batch'

/** Why an intention became no entry. Nothing was changed; the app's catalogue has the sentence. */
export type BatchRefusal =
  | PlanRefusal
  | LedgerRefusal
  | WeighingRefusal
  | { readonly code: 'NO_BATCH' }
  | { readonly code: 'READ_ONLY'; readonly kinds: readonly string[] }
  | { readonly code: 'BATCH_ENDED'; readonly stage: 'closed' | 'abandoned' }
  | { readonly code: 'BATCH_PARKED' }
  | { readonly code: 'NO_SUCH_STEP'; readonly step: string }
  | { readonly code: 'NOT_FOR_THIS_STEP'; readonly step: string }
  | { readonly code: 'STEP_DONE'; readonly step: string }
  | { readonly code: 'GATE'; readonly gates: readonly Gate[] }
  | { readonly code: 'REASON_MISSING' }
  | {
      readonly code: 'OVER_BALANCE'
      readonly massUg: Micrograms
      readonly capacityUg: Micrograms
      readonly balance: string
    }
  | { readonly code: 'OVER_VESSEL'; readonly massUg: Micrograms; readonly roomUg: Micrograms; readonly vessel: string }
  | { readonly code: 'OTHER_MATERIAL'; readonly lot: string; readonly line: string }
  | { readonly code: 'SECOND_PERSON_MISSING' }
  | { readonly code: 'SAME_PERSON' }
  /** Who checks signs with a PIN; `intention` is to be sent again with the signature. */
  | { readonly code: 'SIGNATURE_MISSING'; readonly intention: Checked }
  | { readonly code: 'SIGNATURE_BAD' }
  | { readonly code: 'CHANGED_MEANWHILE' }
  | { readonly code: 'NO_SUCH_ENTRY' }
  | { readonly code: 'CANNOT_BE_STRUCK'; readonly kind: string }
  | { readonly code: 'STRUCK_ALREADY' }
  | { readonly code: 'NO_SUCH_DEVIATION' }
  | { readonly code: 'SETTLED_ALREADY' }
  | { readonly code: 'REMEDY_IMPOSSIBLE' }
  | { readonly code: 'NOT_IN_CUP' }
  | { readonly code: 'NOTHING_WEIGHED' }
  | { readonly code: 'UNKNOWN_VESSEL_HERE'; readonly vessel: string }
  | { readonly code: 'NAME_MISSING' }
  | { readonly code: 'TEMPERATURE_ABSURD'; readonly temperatureC: number }
  | {
      readonly code: 'SURROUNDINGS_ABSURD'
      readonly temperatureC: number
      readonly leastC: number
      readonly mostC: number
    }
  | { readonly code: 'VALUE_ABSURD'; readonly property: string; readonly value: number; readonly meant?: number }
  | { readonly code: 'UNIT_MISSING'; readonly label: string }
  | {
      readonly code: 'OFF_SCALE'
      readonly label: string
      readonly value: number
      readonly least: number
      readonly most: number
    }
  | { readonly code: 'HOW_ABSURD'; readonly label: string; readonly what: string; readonly value: number }
  | { readonly code: 'NOTHING_READ' }
  | { readonly code: 'DECIDED_ALREADY'; readonly decision: string }
  | { readonly code: 'NOT_CLOSED_YET' }
  | { readonly code: 'REWORK_OF_REJECTED' }
  | { readonly code: 'REWORK_WITHOUT_STEPS' }
  | { readonly code: 'MINUTES_BAD' }
  | { readonly code: 'MOMENT_BAD' }
  | { readonly code: 'NO_SUCH_TIMER' }
  | { readonly code: 'TARE_BAD' }
  | { readonly code: 'NO_TARE_HERE'; readonly vessel: string }
  | { readonly code: 'LOSS_IMPOSSIBLE'; readonly lossUg: Micrograms }
  | { readonly code: 'UNITS_BAD'; readonly units: number }
  | { readonly code: 'VESSEL_NOT_LIGHTER'; readonly beforeUg: Micrograms; readonly afterUg: Micrograms }
  | { readonly code: 'BELOW_TARE'; readonly grossUg: Micrograms; readonly tareUg: Micrograms }
  | { readonly code: 'SPEED_ABSURD'; readonly rpm: number }
  | { readonly code: 'DIAMETER_ABSURD'; readonly diameterMm: number }
  | { readonly code: 'RINSE_ABOVE_HELD_BACK'; readonly rinseUg: Micrograms; readonly heldBackUg: Micrograms }
  | { readonly code: 'SAME_PERSON_ALREADY' }
  | { readonly code: 'PLAN_LACKS'; readonly what: 'name' | 'condition' | 'pull' | 'check' }
  | { readonly code: 'PLAN_TWICE'; readonly what: string }
  | { readonly code: 'PLAN_LONG'; readonly what: string; readonly most: number }
  | { readonly code: 'PULL_DAY_BAD'; readonly day: number }
  | { readonly code: 'WINDOW_BAD'; readonly day: number; readonly windowDays: number }
  | { readonly code: 'CYCLE_BAD'; readonly label: string }
  | { readonly code: 'BEFORE_THE_BATCH' }
  | { readonly code: 'NO_SUCH_JAR' }
  | { readonly code: 'CYCLES_BEHIND'; readonly counted: number; readonly wanted: number }
  | { readonly code: 'CYCLES_DONE'; readonly cycles: number }
  | { readonly code: 'PULLED_ALREADY'; readonly jar: string; readonly label: string; readonly was: string }
  | { readonly code: 'PULL_EARLY'; readonly jar: string; readonly days: number }

/** Entries to be written, or why there are none. */
export type Decision = Result<readonly BatchDraft[], BatchRefusal>
