import type { Check } from './formula'

/** Entries about kept jars; what is read of them is `measured`, with the jar's name as its conditions. */
export interface StabilityBodies {
  'stability-planned': StabilityPlan
  /** Frozen and thawed once more; `condition` is one of the plan's. */
  'cycle-counted': { condition: string }
}

/** What is asked of the kept jars of one batch: how they are kept, when they are pulled, what is read of them. */
export interface StabilityPlan {
  readonly name: string
  /** Midday of the day on which the jars were set aside, ms UTC: days count from here, and a changed clock moves none. */
  readonly startsAtMs: number
  readonly conditions: readonly Condition[]
  /** For jars that stand somewhere; those that go through cycles have their own. */
  readonly pulls: readonly PullDay[]
  readonly measures: readonly Measure[]
}

/** One jar for each pull. Its label stands in every result: two of one plan are never the same. */
export interface Condition {
  /** Stands in the address of a jar. */
  readonly id: string
  readonly label: string
  /** Warmer than a shelf: what it shows is an indication, not a date. */
  readonly accelerated?: boolean
  /** Frozen and thawed: hours that one cycle takes, and after how many a jar is pulled. */
  readonly cycles?: { readonly hours: number; readonly pulls: readonly number[] }
}

export interface PullDay {
  readonly day: number
  /** Days before and after it that count as in time. */
  readonly windowDays: number
}

/** A check of the specification, or a free one. */
export type Measure = Omit<Check, 'when'>

/** True for what is read off an instrument or a scale, false for what is looked at, smelled or told in words. */
export const readsNumber = ({ property, unit, limits }: Measure): boolean => {
  switch (property) {
    case 'appearance':
    case 'colour':
    case 'odour':
    case 'centrifuge':
      return false
    case 'other':
      return unit !== undefined || limits !== undefined
    default:
      return true
  }
}

/** A jar as its results name it: "40 °C, week 4". */
export const jarName = ({ label, cycles }: Condition, at: number): string => {
  if (cycles) return `${label}, cycle ${at}`
  return at > 0 && at % 7 === 0 ? `${label}, week ${at / 7}` : `${label}, day ${at}`
}

/** Which jar a result was read of: its condition's label, and the days or cycles it stood. Undefined for other words. */
export function jarOf(conditions: string): { readonly label: string; readonly at: number } | undefined {
  const [, label, unit, count] = /^(.+), (week|day|cycle) (\d{1,5})$/.exec(conditions.trim()) ?? []
  if (label === undefined) return undefined
  return { label, at: Number(count) * (unit === 'week' ? 7 : 1) }
}
