import type { ActiveClass } from '../../../src/batch/catalogue.ts'
import type { Check, Line, SharedLimit, VesselNeed } from '../../../src/batch/formula.ts'
import type { Step } from '../../../src/batch/step.ts'
import { g } from './mass.ts'

/** Turns of phrase of the data modules: percentages as a formula sheet writes them, steps of the usual kinds. */
export const percent = (value: number): number => Number((value / 100).toFixed(8))

type LineMore = Partial<Omit<Line, 'id' | 'materialId' | 'amount'>>

export const line = (materialId: string, percentOfBatch: number, more: LineMore & { id?: string } = {}): Line => ({
  id: materialId,
  materialId,
  amount: { kind: 'fraction', fraction: percent(percentOfBatch) },
  ...more,
})

export const asNeeded = (
  materialId: string,
  percents: { expected: number; min: number; max: number },
  more: LineMore & { id?: string } = {},
): Line => ({
  id: materialId,
  materialId,
  amount: {
    kind: 'as-needed',
    expected: percent(percents.expected),
    min: percent(percents.min),
    max: percent(percents.max),
  },
  ...more,
})

export const water = (portions: Extract<Line['amount'], { kind: 'qs' }>['portions']): Line => ({
  id: 'aqua',
  materialId: 'aqua',
  amount: { kind: 'qs', portions, heldBack: percent(3) },
})

type StepMore = Partial<Pick<Step, 'title' | 'instruction' | 'after' | 'secondPerson' | 'caution'>>

export const weigh = (id: string, phase: string, lineId: string, vessel: string, more: StepMore = {}): Step => ({
  id,
  phase,
  vessel,
  kind: 'weigh',
  line: lineId,
  ...more,
})

export const vessel = (id: string, name: string, roomFactor: number, holds?: string): VesselNeed => ({
  id,
  name,
  kind: 'vessel',
  roomFactor,
  ...(holds === undefined ? {} : { holds }),
})

export const cup = (id: string, name: string, openLifeMinutes?: number): VesselNeed => ({
  id,
  name,
  kind: 'cup',
  roomFactor: 1.5,
  ...(openLifeMinutes === undefined ? {} : { openLifeMinutes }),
})

/** The three readings of pH that every formula takes: while adjusting, after making up, and the next day. */
export const phChecks = (limits: { min: number; max: number }, dilution: number | null): Check[] => {
  const basis: Check['basis'] = dilution === null ? { kind: 'neat' } : { kind: 'dilution', fraction: percent(dilution) }
  const method = dilution === null ? 'meter, neat, 25 °C' : `meter, ${dilution} % in purified water, 25 °C`
  const common = { property: 'pH' as const, method, basis, limits }
  return [
    { id: 'ph', label: 'pH', when: 'in-process', ...common },
    { id: 'ph-made-up', label: 'pH after make-up', when: 'in-process', ...common },
    { id: 'ph-rested', label: 'pH, rested', when: 'after-rest', ...common },
  ]
}

export const looks = (expected: string): Check => ({
  id: 'appearance',
  property: 'appearance',
  label: 'Appearance',
  expected,
  when: 'after-rest',
})

export const smells = (expected: string): Check => ({
  id: 'odour',
  property: 'odour',
  label: 'Odour',
  expected,
  when: 'after-rest',
})

/** What every procedure ends with, after the last adjustment: make up, read again, sample, fill, clean. */
export const finishing = (phReading: string, cleaning: string, jars = 2, unitUg = g(150)): Step[] => [
  { id: 'make-up', phase: 'finish', vessel: 'main', kind: 'make-up', line: 'aqua' },
  {
    id: phReading,
    phase: 'finish',
    vessel: 'main',
    kind: 'measure',
    check: 'ph-made-up',
    instruction: 'Stir the made-up water in first',
  },
  { id: 'sample', phase: 'finish', vessel: 'main', kind: 'sample', jars, eachUg: g(30) },
  { id: 'fill', phase: 'finish', vessel: 'main', kind: 'fill', eachUg: unitUg },
  { id: 'clean', phase: 'finish', vessel: 'main', kind: 'clean', instruction: cleaning },
]

export const preflight = (...more: string[]): readonly string[] => [
  'Bench and vessels clean, labelled, dry',
  'Balances level and checked',
  'pH meter calibrated with two buffers',
  ...more,
]

/** At most so many percent of one constituent, in whatever line it comes. */
export const constituent = (name: string, mostPercent: number): SharedLimit => ({
  id: `most-${name.toLowerCase().replace(/ /g, '-')}`,
  name,
  of: { kind: 'inci', name },
  max: percent(mostPercent),
})

/** Active matter of a class, whatever the strength of what brings it. */
export const actives = (activeClass: ActiveClass, percents: { min: number; max: number }): SharedLimit => ({
  id: `active-${activeClass.replace(/ /g, '-')}`,
  name: `Active matter, ${activeClass}`,
  of: { kind: 'active', class: activeClass },
  min: percent(percents.min),
  max: percent(percents.max),
})

/** All preservatives together. */
export const preservatives = (mostPercent: number): SharedLimit => ({
  id: 'preservatives',
  name: 'Preservatives, sum',
  of: { kind: 'function', function: 'preservative' },
  max: percent(mostPercent),
})
