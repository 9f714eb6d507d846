import type { KindOf } from '../../../batch/step'
import { PhCard } from './ph'
import { useStep } from './use-step'
import { ViscosityCard } from './viscosity'

/** Portions of an adjuster, each followed by a reading, until the window is met. */
export function AdjustCard({ step }: { step: KindOf<'adjust'> }) {
  const { state } = useStep(step)
  const check = state.header.revision.specification.find(({ id }) => id === step.check)
  if (check === undefined) return null
  return step.property === 'pH' ? <PhCard step={step} check={check} /> : <ViscosityCard step={step} check={check} />
}
