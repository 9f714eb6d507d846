import { type ReadonlySignal, signal } from '@preact/signals'
import type { Check } from '../../batch/formula'
import { msOf } from '../../batch/instant'
import { dayMs } from '../../batch/pulls'
import { stabilityOf } from '../../batch/stability'
import type { Condition, Measure, StabilityPlan } from '../../batch/stability-plan'
import {
  type KeptTemplate,
  measuresOf,
  type StabilityTemplate,
  sameCheck,
  stabilityTemplates,
} from '../../batch/stability-templates'
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
  readonly free: readonly FreeDraft[]
}

/** Something that the specification does not ask for; `like`: how it is read, where a template says so. */
export interface FreeDraft {
  readonly label: string
  readonly unit: string
  readonly like?: Omit<Measure, 'id' | 'label' | 'unit' | 'limits'>
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

type Template = StabilityTemplate | KeptTemplate

/** What a template sets, over what is the batch's own. */
function fromTemplate(template: Template, specification: readonly Check[]): Partial<PlanDraft> {
  const { id, name, conditions, pulls } = template
  return {
    template: id,
    name,
    conditions: conditions.map(draftOfCondition),
    pulls: pulls.map(({ day, windowDays }) => ({ day: String(day), windowDays: String(windowDays) })),
    ...('measures' in template ? readOf(template.measures, specification) : {}),
  }
}

/** Measures as checks of this batch, where it has them, and as something else where not. */
function readOf(measures: readonly Measure[], specification: readonly Check[]): Pick<PlanDraft, 'checks' | 'free'> {
  const own = measures.filter((measure) => !sameCheck(specification, measure))
  return {
    checks: [...new Set(measures.flatMap((measure) => sameCheck(specification, measure)?.id ?? []))],
    free: own.map(({ id: _id, label, unit = '', limits: _limits, ...like }) => ({ label, unit, like })),
  }
}

const draftOfCondition = ({ label, accelerated = false, cycles }: Condition): ConditionDraft => ({
  label,
  accelerated,
  ...(cycles ? { cycles: { hours: String(cycles.hours), pulls: cycles.pulls.join(', ') } } : {}),
})

/** Begins with the plan that counts, else with the first template. */
export function createPlanForm(
  state: BatchState,
  offsetMinutes: number,
  own: () => readonly KeptTemplate[] = () => [],
): PlanForm {
  const { specification } = state.header.revision
  const plan = stabilityOf(state)?.plan
  const dateOf = (atMs: number): string => new Date(atMs + offsetMinutes * 60_000).toISOString().slice(0, 10)
  const base = plan ? { ...plan, id: '' } : stabilityTemplates[0]
  if (base === undefined) throw new Error('no template')
  const draft = signal<PlanDraft>({
    ...emptyDraft,
    ...readOf(measuresOf(specification), specification),
    ...fromTemplate(base, specification),
    on: dateOf(plan?.startsAtMs ?? state.decision?.atMs ?? state.lastAtMs),
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
      const template = [...stabilityTemplates, ...own()].find((each) => each.id === id)
      if (template) draft.value = { ...draft.value, ...fromTemplate(template, specification) }
      problem.value = null
    },
    read: () => {
      const made = planOf(draft.value, specification, offsetMinutes)
      problem.value = 'what' in made ? made : null
      return 'what' in made ? null : made
    },
  }
}

const emptyDraft: PlanDraft = { template: '', name: '', on: '', conditions: [], pulls: [], checks: [], free: [] }

function planOf(draft: PlanDraft, specification: readonly Check[], offsetMinutes: number): StabilityPlan | PlanProblem {
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
    ({ label, unit, like = { property: 'other' } }): Measure => ({
      ...like,
      id: idOf(`free ${label}`, taken),
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
