import type { Condition, StabilityPlan } from './stability-plan'

/** One jar to be pulled, with the moments between which its standing changes. Moments in ms UTC. */
export interface PlannedPull {
  /** Unique in its plan, and the end of the jar's address. */
  readonly id: string
  readonly condition: Condition
  /** Days it stood; cycles for what is frozen and thawed. */
  readonly at: number
  readonly dueAtMs: number
  /** First and last moment in time for it. */
  readonly fromMs: number
  readonly untilMs: number
  /** From here on the result would say more about the next pull than about this one. */
  readonly missedAtMs: number
}

export type Standing = 'to come' | 'due' | 'late' | 'missed'

export const dayMs = 86_400_000

/** A jar after its cycles is read within a day. */
const cycleWindowDays = 1

/** A single pull after nothing: how long it may be late, days. */
const leastGapDays = 2

/** All pulls of a plan, the first to come due first. */
export function pullsOf(plan: StabilityPlan): readonly PlannedPull[] {
  return plan.conditions
    .flatMap((condition) => {
      const days = daysOf(plan, condition)
      return days.map((each, index) => pullOf(plan, condition, each, gapAfter(days, index)))
    })
    .sort((one, other) => one.dueAtMs - other.dueAtMs)
}

/** Where a pull that is not done stands by the clock; it is never stored. */
export function standingOf({ fromMs, untilMs, missedAtMs }: Moments, nowMs: number): Standing {
  if (nowMs < fromMs) return 'to come'
  if (nowMs <= untilMs) return 'due'
  return nowMs < missedAtMs ? 'late' : 'missed'
}

type Moments = Pick<PlannedPull, 'fromMs' | 'untilMs' | 'missedAtMs'>

/** Whole days past the last one in time, begun ones counted; 0 where it was in time. */
export const daysLate = ({ untilMs }: Pick<PlannedPull, 'untilMs'>, atMs: number): number =>
  Math.max(0, Math.ceil((atMs - untilMs) / dayMs))

interface Day {
  readonly at: number
  readonly day: number
  readonly windowDays: number
}

function daysOf(plan: StabilityPlan, { cycles }: Condition): readonly Day[] {
  const days = cycles
    ? cycles.pulls.map((at) => ({ at, day: (at * cycles.hours) / 24, windowDays: cycleWindowDays }))
    : plan.pulls.map(({ day, windowDays }) => ({ at: day, day, windowDays }))
  return days.sort((one, other) => one.day - other.day)
}

/** Days to the next pull of the condition; after the last one as many as went before it. */
function gapAfter(days: readonly Day[], index: number): number {
  const day = days[index]?.day ?? 0
  const next = days[index + 1]?.day
  return next === undefined ? Math.max(leastGapDays, day - (days[index - 1]?.day ?? 0)) : next - day
}

function pullOf(plan: StabilityPlan, condition: Condition, { at, day, windowDays }: Day, gapDays: number): PlannedPull {
  const dueAtMs = plan.startsAtMs + day * dayMs
  // The day is told at its midday and is whole: half a day more on each side.
  const reachMs = (windowDays + 0.5) * dayMs
  const untilMs = dueAtMs + reachMs
  return {
    id: `${condition.id}.${at}`,
    condition,
    at,
    dueAtMs,
    fromMs: dueAtMs - reachMs,
    untilMs,
    missedAtMs: Math.max(untilMs, dueAtMs + (gapDays * dayMs) / 2),
  }
}
