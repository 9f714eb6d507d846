import { needsUnit, unitOf } from './how-read'
import { dayMs } from './pulls'
import type { BatchRefusal } from './refusal'
import { readsNumber, type StabilityPlan } from './stability-plan'

const furthestDay = 3650
const widestWindowDays = 60
const longestCycleHours = 336
const mostCycles = 100
const longestName = 80
const longestMeasure = 200
const longestUnit = 40

/** Why a plan cannot be kept to; null where it can. */
export function planProblem(plan: StabilityPlan, openedAtMs: number): BatchRefusal | null {
  return (
    lacking(plan) ??
    tooLong(plan) ??
    badPull(plan) ??
    badCycle(plan) ??
    twice(plan) ??
    withoutUnit(plan) ??
    early(plan, openedAtMs)
  )
}

function lacking({ name, conditions, pulls, measures }: StabilityPlan): BatchRefusal | null {
  if (name.trim() === '') return { code: 'PLAN_LACKS', what: 'name' }
  if (conditions.length === 0) return { code: 'PLAN_LACKS', what: 'condition' }
  if (measures.length === 0) return { code: 'PLAN_LACKS', what: 'check' }
  const isEmpty = conditions.some(({ cycles }) => (cycles?.pulls ?? pulls).length === 0)
  return isEmpty ? { code: 'PLAN_LACKS', what: 'pull' } : null
}

/** What an entry takes of each text: a longer one would come back from no file. */
function tooLong({ name, conditions, measures }: StabilityPlan): BatchRefusal | null {
  const texts: readonly (readonly [text: string, most: number])[] = [
    [name, longestName],
    ...conditions.map(({ label }) => [label, longestName] as const),
    ...measures.map(({ label }) => [label, longestMeasure] as const),
    ...measures.map(({ unit = '' }) => [unit, longestUnit] as const),
  ]
  const long = texts.find(([text, most]) => text.trim().length > most)
  return long ? { code: 'PLAN_LONG', what: `${long[0].trim().slice(0, 24)}…`, most: long[1] } : null
}

function badPull({ pulls }: StabilityPlan): BatchRefusal | null {
  for (const { day, windowDays } of pulls) {
    if (!isWhole(day, 0, furthestDay)) return { code: 'PULL_DAY_BAD', day }
    if (!isWhole(windowDays, 0, widestWindowDays)) return { code: 'WINDOW_BAD', day, windowDays }
  }
  return null
}

function badCycle({ conditions }: StabilityPlan): BatchRefusal | null {
  const bad = conditions.find(
    ({ cycles }) =>
      cycles &&
      !(
        cycles.hours >= 1 &&
        cycles.hours <= longestCycleHours &&
        cycles.pulls.every((count) => isWhole(count, 1, mostCycles))
      ),
  )
  return bad ? { code: 'CYCLE_BAD', label: bad.label } : null
}

function twice({ conditions, pulls, measures }: StabilityPlan): BatchRefusal | null {
  const what =
    repeated(conditions.map(({ label }) => label.trim())) ??
    repeated(conditions.map(({ id }) => id)) ??
    repeated(measures.map(({ label }) => label.trim())) ??
    repeated(measures.map(({ id }) => id)) ??
    repeated(pulls.map(({ day }) => `day ${day}`)) ??
    conditions.map(({ cycles }) => repeated((cycles?.pulls ?? []).map((count) => `cycle ${count}`))).find(Boolean)
  return what === undefined ? null : { code: 'PLAN_TWICE', what }
}

/** A number is nothing without its unit, unless it is one by itself. */
function withoutUnit({ measures }: StabilityPlan): BatchRefusal | null {
  const bare = measures.find(
    (measure) => readsNumber(measure) && needsUnit(measure.property) && !unitOf(measure)?.trim(),
  )
  return bare ? { code: 'UNIT_MISSING', label: bare.label } : null
}

/** The whole day counts on which the jars were set aside. */
const early = ({ startsAtMs }: StabilityPlan, openedAtMs: number): BatchRefusal | null =>
  startsAtMs + dayMs / 2 < openedAtMs ? { code: 'BEFORE_THE_BATCH' } : null

const isWhole = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most

const repeated = (values: readonly string[]): string | undefined =>
  values.find((value, index) => values.indexOf(value) !== index)
