import { type ReadonlySignal, signal } from '@preact/signals'
import { msOf } from '../../batch/instant'
import { dayMs } from '../../batch/pulls'
import { stabilityOf } from '../../batch/stability'
import type { Condition, Measure, StabilityPlan } from '../../batch/stability-plan'
import { measuresOf, type StabilityTemplate, stabilityTemplates } from '../../batch/stability-templates'
import type { BatchState } from '../../batch/state'
import { type NumberRefusal, readDecimal } from '../../trade/number-text'

/** A plan half-made: numbers are texts, so that nothing typed is lost. */
export interface PlanDraft {
  readonly template: string
  readonly name: string
  /** Local date of the day on which the jars were set aside. */
  readonly on: string
  readonly conditions: readonly ConditionDraft[]
  readonly pulls: readonly { readonly day: string; readonly windowDays: string }[]
  /** Ids of the specification's checks that are read. */
  readonly checks: readonly string[]
  readonly free: readonly { readonly label: string; readonly unit: string }[]
}

export interface ConditionDraft {
  readonly label: string
  readonly accelerated: boolean
  readonly cycles?: { readonly hours: string; readonly pulls: string }
}

export type PlanProblem =
  | { readonly what: string; readonly refusal: NumberRefusal }
  | { readonly what: 'day'; readonly refusal: null }

export interface PlanForm {
  readonly draft: ReadonlySignal<PlanDraft>
  readonly problem: ReadonlySignal<PlanProblem | null>
  readonly change: (part: Partial<PlanDraft>) => void
  readonly take: (template: string) => void
  /** The plan, or null with `problem` set. What else is wrong with it `decide` says. */
  readonly read: () => StabilityPlan | null
}

/** What a template sets, over what is the batch's own. */
const fromTemplate = ({ id, name, conditions, pulls }: Omit<StabilityTemplate, 'id'> & { id: string }) => ({
  template: id,
  name,
  conditions: conditions.map(draftOfCondition),
  pulls: pulls.map(({ day, windowDays }) => ({ day: String(day), windowDays: String(windowDays) })),
})

const draftOfCondition = ({ label, accelerated = false, cycles }: Condition): ConditionDraft => ({
  label,
  accelerated,
  ...(cycles ? { cycles: { hours: String(cycles.hours), pulls: cycles.pulls.join(', ') } } : {}),
})

/** Begins with the plan that counts, else with the first template. */
export function createPlanForm(state: BatchState, offsetMinutes: number): PlanForm {
  const { specification } = state.header.revision
  const plan = stabilityOf(state)?.plan
  const dateOf = (atMs: number): string => new Date(atMs + offsetMinutes * 60_000).toISOString().slice(0, 10)
  const base = plan ? { ...plan, id: '' } : stabilityTemplates[0]
  if (base === undefined) throw new Error('no template')
  const ids = new Set(specification.map(({ id }) => id))
  const read = plan?.measures ?? measuresOf(specification)
  const draft = signal<PlanDraft>({
    ...fromTemplate(base),
    on: dateOf(plan?.startsAtMs ?? state.decision?.atMs ?? state.lastAtMs),
    checks: read.map(({ id }) => id).filter((id) => ids.has(id)),
    free: (plan?.measures ?? []).filter(({ id }) => !ids.has(id)).map(({ label, unit = '' }) => ({ label, unit })),
  })
  const problem = signal<PlanProblem | null>(null)
  return {
    draft,
    problem,
    change: (part) => {
      draft.value = { ...draft.value, ...part }
      problem.value = null
    },
    take: (id) => {
      const template = stabilityTemplates.find((each) => each.id === id)
      if (template) draft.value = { ...draft.value, ...fromTemplate(template) }
      problem.value = null
    },
    read: () => {
      const made = planOf(draft.value, specification, offsetMinutes)
      problem.value = 'what' in made ? made : null
      return 'what' in made ? null : made
    },
  }
}

function planOf(
  draft: PlanDraft,
  specification: readonly (Measure & { readonly when: string })[],
  offsetMinutes: number,
): StabilityPlan | PlanProblem {
  const midnightMs = msOf(draft.on)
  if (Number.isNaN(midnightMs)) return { what: 'day', refusal: null }
  let wrong: PlanProblem | null = null
  const number = (what: string, text: string): number => {
    const read = readDecimal(text, { negative: false })
    if (!read.ok) wrong ??= { what, refusal: read.refusal }
    return read.ok ? read.value : 0
  }
  const taken = new Set<string>()
  const conditions = draft.conditions.map(
    ({ label, accelerated, cycles }): Condition => ({
      id: idOf(label, taken),
      label: label.trim(),
      ...(accelerated ? { accelerated } : {}),
      ...(cycles
        ? {
            cycles: {
              hours: number(`${label}, hours`, cycles.hours),
              pulls: cycles.pulls
                .split(/[,;\s]+/)
                .filter(Boolean)
                .map((text) => number(`${label}, cycles`, text)),
            },
          }
        : {}),
    }),
  )
  const pulls = draft.pulls.map(({ day, windowDays }) => ({
    day: number('Day', day),
    windowDays: number(`Day ${day}, window`, windowDays),
  }))
  const checks = specification
    .filter(({ id }) => draft.checks.includes(id))
    .map(({ when: _when, ...measure }) => measure)
  const free = draft.free.map(
    ({ label, unit }): Measure => ({
      id: idOf(`free ${label}`, taken),
      property: 'other',
      label: label.trim(),
      ...(unit.trim() === '' ? {} : { unit: unit.trim() }),
    }),
  )
  return (
    wrong ?? {
      name: draft.name.trim(),
      startsAtMs: midnightMs + dayMs / 2 - offsetMinutes * 60_000,
      conditions,
      pulls,
      measures: [...checks, ...free.filter(({ label }) => label !== '')],
    }
  )
}

/** A short id that an address takes, from a label: "40 °C" gives 40c. */
function idOf(label: string, taken: Set<string>): string {
  const plain =
    label
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '')
      .slice(0, 20) || 'jar'
  let id = plain
  for (let count = 2; taken.has(id); count += 1) id = `${plain}${count}`
  taken.add(id)
  return id
}
