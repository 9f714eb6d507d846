import { makeUpOf } from '../../src/batch/make-up'
import type { PlannedStep } from '../../src/batch/plan'
import { isDone, vesselNow } from '../../src/batch/progress'
import { weighingOf } from '../../src/batch/weighing-of'
import { roundToStep } from '../../src/trade/mass'
import { gramsFromMicrograms } from '../../src/trade/mass-ratio'
import type { TestBench } from './batch'

/** Does every step before the one named, all on target; the whole batch where none is named. */
export function runUpTo(bench: TestBench, stop?: string): void {
  for (const planned of bench.state.plan.steps) {
    if (planned.id === stop) return
    if (!isDone(bench.state, planned.id)) doStep(bench, planned.id)
  }
}

/** Does one step as the procedure asks, with the readings and timers that it waits for. */
export function doStep(bench: TestBench, id: string): void {
  const planned = bench.state.plan.byId.get(id)
  if (!planned) throw new Error(`no step ${id}`)
  const { step } = planned
  bench.wait(1)
  switch (step.kind) {
    case 'weigh':
      weighOnTarget(bench, id)
      return
    case 'charge':
      bench.charge(id)
      return
    case 'combine':
      for (const vessel of [step.from, step.vessel]) bench.read(vessel, (step.bothAtLeastC ?? 20) + 5)
      bench.combine(id)
      return
    case 'heat':
      bench.read(step.vessel, step.targetC)
      if (step.holdMinutes !== undefined) runTimer(bench, id, step.holdMinutes)
      bench.finish(id)
      return
    case 'cool':
      bench.read(step.vessel, step.targetC - 1)
      bench.finish(id)
      return
    case 'hold':
    case 'hydrate':
    case 'mix':
    case 'deaerate':
      runTimer(bench, id, step.minutes)
      bench.finish(id)
      return
    case 'rest':
      runTimer(bench, id, step.hours * 60)
      bench.finish(id)
      return
    case 'adjust':
    case 'measure':
      measureWell(bench, planned)
      if (step.kind === 'adjust') bench.finish(id)
      return
    default:
      putAway(bench, planned)
  }
}

/** Weighs what is left of a step, as near to its target as its balance shows. */
export function weighOnTarget(bench: TestBench, id: string): string {
  const weighing = weighingOf(bench.state, id)
  if (!weighing) throw new Error(`${id} weighs nothing`)
  const massUg = Math.max(weighing.stepUg, roundToStep(weighing.leftUg, weighing.stepUg))
  return bench.weigh(id, String(gramsFromMicrograms(massUg)))
}

function runTimer(bench: TestBench, id: string, minutes: number): void {
  const timer = bench.timer(id, minutes)
  bench.wait(minutes)
  bench.intend({ do: 'acknowledge-timer', timer })
}

function measureWell(bench: TestBench, { id, step }: PlannedStep): void {
  if (step.kind !== 'measure' && step.kind !== 'adjust') return
  const check = bench.state.header.revision.specification.find((each) => each.id === step.check)
  if (!check) throw new Error(`no check ${step.check}`)
  const { min, max } = check.limits ?? {}
  const value = min === undefined || max === undefined ? undefined : (min + max) / 2
  const unit = check.unit === undefined ? {} : { unit: check.unit }
  const common = { step: id, check: check.id, property: check.property, label: check.label, ...unit }
  bench.measure(value === undefined ? { ...common, text: 'as it should be', good: true } : { ...common, value })
}

function putAway(bench: TestBench, { id, step }: PlannedStep): void {
  const vessel = vesselNow(bench.state, step.vessel)
  switch (step.kind) {
    case 'make-up': {
      const { toAddUg } = makeUpOf(bench.state, step.vessel, step.line)
      bench.intend({ do: 'make-up', step: id, netUg: toAddUg })
      return
    }
    case 'sample': {
      const massUg = step.jars * step.eachUg
      bench.intend({ do: 'sample', step: id, vessel, massUg, jars: step.jars, purpose: 'rested checks' })
      return
    }
    case 'fill':
      bench.intend({ do: 'fill', step: id, vessel, massUg: bench.massIn(vessel), units: 1 })
      return
    default:
      bench.finish(id)
  }
}
