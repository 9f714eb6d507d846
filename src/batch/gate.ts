import type { Micrograms } from '../trade/mass'

/**
 * What stands in the way of a step. Every gate can be passed with a reason, which is recorded, except what is
 * physically impossible. `key` is what a passed gate is remembered by.
 */
export type Gate = { readonly key: string; readonly passable: boolean } & GateReason

export type GateReason =
  | { readonly code: 'ORDER'; readonly steps: readonly string[] }
  | {
      readonly code: 'TOO_HOT'
      readonly vessel: string
      readonly limitC: number
      readonly lastC: number
      readonly ageMs: number
      readonly material?: string
    }
  | {
      readonly code: 'TEMPERATURE_OLD'
      readonly vessel: string
      readonly limitC: number
      readonly lastC: number
      readonly ageMs: number
    }
  | { readonly code: 'TEMPERATURE_UNKNOWN'; readonly vessel: string; readonly limitC?: number }
  | { readonly code: 'NOT_YET_WARM'; readonly vessel: string; readonly leastC: number; readonly lastC: number }
  | { readonly code: 'TOO_FAR_APART'; readonly differenceC: number; readonly mostC: number }
  | { readonly code: 'TIMER_RUNNING'; readonly leftMs: number }
  | { readonly code: 'TIMER_NOT_STARTED'; readonly minutes: number }
  | { readonly code: 'NO_TARE'; readonly vessel: string }
  | { readonly code: 'NO_LOT'; readonly line: string }
  | { readonly code: 'LOT_EXPIRED' | 'LOT_QUARANTINED'; readonly lot: string }
  | { readonly code: 'CUP_EMPTY'; readonly vessel: string }
  | { readonly code: 'CUP_TOO_OLD'; readonly vessel: string; readonly ageMs: number; readonly mostMinutes: number }
  | { readonly code: 'DEVIATION_OPEN'; readonly deviation: string }
  | { readonly code: 'ABOVE_THEORY'; readonly aboveUg: Micrograms }
  | {
      readonly code: 'OUTSIDE_LIMITS'
      readonly label: string
      readonly value?: number
      readonly low?: number
      readonly high?: number
    }
  | {
      readonly code: 'SPEED_OUTSIDE'
      readonly tool: string
      readonly rpm: number
      readonly range: { readonly min: number; readonly max: number }
    }
  | { readonly code: 'ABOVE_MAXIMUM'; readonly massUg: Micrograms; readonly mostUg: Micrograms }
