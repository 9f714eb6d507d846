import type { KindOf } from '../../../batch/step'
import { ThermalCard } from './thermal-card'
import { useStep } from './use-step'

/** Within this of the figure, a thermometer counts as there. */
const reachedWithinC = 1

/** Heating to a figure, and holding there where the step says so. */
export function HeatCard({ step }: { step: KindOf<'heat'> }) {
  const { state, vessel } = useStep(step)
  const last = state.vessels.get(vessel)?.readings.at(-1)
  return (
    <ThermalCard
      step={step}
      reached={last !== undefined && last.temperatureC >= step.targetC - reachedWithinC}
      leftC={last === undefined ? null : step.targetC - last.temperatureC}
      holdMinutes={step.holdMinutes}
      how={step.covered ? 'Covered, so that little water is lost. ' : ''}
      change={
        step.covered
          ? { label: 'Cover off', what: 'cover off', icon: 'wind' }
          : { label: 'Cover on', what: 'cover on', icon: 'wind' }
      }
    />
  )
}

/** Cooling, by air or in a bath, to a figure. */
export function CoolCard({ step }: { step: KindOf<'cool'> }) {
  const { state, vessel } = useStep(step)
  const last = state.vessels.get(vessel)?.readings.at(-1)
  return (
    <ThermalCard
      step={step}
      reached={last !== undefined && last.temperatureC <= step.targetC}
      leftC={last === undefined ? null : last.temperatureC - step.targetC}
      how={step.by === 'bath' ? 'In a bath, stirring. ' : 'In air, stirring. '}
      change={
        step.by === 'bath'
          ? { label: 'Bath changed', what: 'fresh cold water', icon: 'droplets' }
          : { label: 'Cover off', what: 'cover off', icon: 'wind' }
      }
    />
  )
}
