import type { JarResult } from '../../src/batch/intention'
import { dayMs } from '../../src/batch/pulls'
import { type PullState, stabilityOf } from '../../src/batch/stability'
import type { StabilityPlan } from '../../src/batch/stability-plan'
import { openTestBench, type TestBench } from './batch'
import { lotionHeader } from './formulas'

/** Midday of the day on which the test bench opens its batch. */
const startsAtMs = Date.UTC(2026, 10, 24, 12)

export const plan: StabilityPlan = {
  name: 'Four weeks',
  startsAtMs,
  conditions: [
    { id: '25c', label: '25 °C' },
    { id: '40c', label: '40 °C', accelerated: true },
    { id: 'ft', label: 'Freeze–thaw', accelerated: true, cycles: { hours: 48, pulls: [1, 3] } },
  ],
  pulls: [
    { day: 7, windowDays: 1 },
    { day: 28, windowDays: 2 },
  ],
  measures: [
    { id: 'ph-rested', property: 'pH', label: 'pH, rested', limits: { min: 4.9, max: 5.3 } },
    { id: 'viscosity', property: 'viscosity', label: 'Viscosity, rested', unit: 'mPa·s' },
    { id: 'look', property: 'appearance', label: 'Appearance' },
  ],
}

/** A batch of lotion with this plan; its clock stands at the morning on which it was opened. */
export function plannedBench(changed: Partial<StabilityPlan> = {}): TestBench {
  const bench = openTestBench(lotionHeader())
  bench.intend({ do: 'plan-stability', plan: { ...plan, ...changed } })
  return bench
}

/** Midday so many days after the jars were set aside. */
export const middayOf = (day: number): number => startsAtMs + day * dayMs

export const wholeJar: readonly JarResult[] = [
  { measure: 'ph-rested', value: 5.1 },
  { measure: 'viscosity', value: 11_000 },
  { measure: 'look', text: 'white, even', good: true },
]

export const pull = (condition: string, at: number, readings = wholeJar) =>
  ({ do: 'pull', condition, at, readings }) as const

export function jar(bench: TestBench, id: string): PullState {
  const found = stabilityOf(bench.state)?.pulls.find((each) => each.id === id)
  if (!found) throw new Error(`no jar ${id}`)
  return found
}
