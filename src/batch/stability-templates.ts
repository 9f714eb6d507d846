import type { Check } from './formula'
import type { Condition, Measure, PullDay, StabilityPlan } from './stability-plan'

/** A plan to begin with: everything but the batch's own checks and day. */
export interface StabilityTemplate {
  readonly id: string
  readonly name: string
  readonly conditions: readonly Condition[]
  readonly pulls: readonly PullDay[]
}

/** A template of the house: it also says what is read, and stays in the backup once it was removed. */
export interface KeptTemplate extends StabilityTemplate {
  readonly measures: StabilityPlan['measures']
  readonly archived?: boolean
}

/** A plan as a template: limits belong to the formula of a batch. */
export const templateOf = (id: string, name: string, plan: StabilityPlan): KeptTemplate => ({
  id,
  name: name.trim(),
  conditions: plan.conditions,
  pulls: plan.pulls,
  measures: plan.measures.map(({ limits: _limits, ...measure }) => measure),
})

/** The check of a specification that reads the same: by its id, else by what it is called. */
export const sameCheck = (specification: readonly Check[], { id, property, label }: Measure): Check | undefined =>
  specification.find((check) => check.id === id && check.property === property) ??
  specification.find(
    (check) => check.property === property && check.label.trim().toLowerCase() === label.trim().toLowerCase(),
  )

const cold: Condition = { id: '4c', label: '4 °C' }
const shelf: Condition = { id: '25c', label: '25 °C' }
const hot: Condition = { id: '40c', label: '40 °C', accelerated: true }
const frozen: Condition = {
  id: 'ft',
  label: 'Freeze–thaw −10/25 °C',
  accelerated: true,
  cycles: { hours: 48, pulls: [1, 3, 5] },
}

/** Days with the window that the trade gives them: a day in the first fortnight, a tenth of the time after it. */
const on = (...days: readonly number[]): readonly PullDay[] =>
  days.map((day) => ({ day, windowDays: day === 0 ? 0 : Math.max(1, Math.min(7, Math.floor(day / 14))) }))

/** Common plans of the trade, illustrative: conditions and days can be changed before one is kept. */
export const stabilityTemplates: readonly StabilityTemplate[] = [
  {
    id: 'twelve-weeks',
    name: '12 weeks with freeze–thaw',
    conditions: [cold, shelf, hot, frozen],
    pulls: on(0, 7, 14, 28, 56, 84),
  },
  { id: 'four-weeks', name: 'Quick look, 4 weeks', conditions: [shelf, hot], pulls: on(0, 7, 14, 28) },
  { id: 'cycles', name: 'Freeze–thaw only', conditions: [frozen], pulls: [] },
  { id: 'year', name: 'A year on the shelf', conditions: [shelf], pulls: on(0, 28, 91, 182, 273, 364) },
]

/** The checks of a specification as a plan reads them: what is read in process only is not. */
export const measuresOf = (specification: readonly Check[]): StabilityPlan['measures'] =>
  specification.filter(({ when }) => when === 'after-rest').map(({ when: _when, ...measure }) => measure)
