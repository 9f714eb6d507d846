import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { TimedCard } from './timed'
import { useStep } from './use-step'

/** Stirring or homogenising: the tool, its speed, and for how long. */
export function MixCard({ step }: { step: KindOf<'mix'> }) {
  const { state } = useStep(step)
  return (
    <TimedCard
      step={step}
      minutes={step.minutes}
      under={askOf(step, state.header)}
      doing="Mixing"
      sees={['even', 'a little foam', 'lumps', 'separating']}
      rpm={step.rpm}
      why={step.noVortex ? 'Slow enough that no vortex is drawn: a vortex takes in air.' : undefined}
    />
  )
}
