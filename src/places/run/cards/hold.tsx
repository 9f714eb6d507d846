import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { TimedCard } from './timed'
import { useStep } from './use-step'

export function HoldCard({ step }: { step: KindOf<'hold'> }) {
  const { state } = useStep(step)
  return (
    <TimedCard
      step={step}
      minutes={step.minutes}
      under={askOf(step, state.header)}
      startsWhen={step.startsWhen}
      doing="Holding"
      sees={['even', 'a skin on top', 'separating']}
    />
  )
}

export function HydrateCard({ step }: { step: KindOf<'hydrate'> }) {
  const { state } = useStep(step)
  return (
    <TimedCard
      step={step}
      minutes={step.minutes}
      under={[askOf(step, state.header), step.shear].filter(Boolean).join(', ')}
      startsWhen={step.startsWhen ?? 'lump-free'}
      doing="Hydrating"
      sees={['smooth, no lumps', 'a few lumps', 'thick on the wall']}
      why="Judge the thickness after the rest, not now."
    />
  )
}

export function DeaerateCard({ step }: { step: KindOf<'deaerate'> }) {
  const { state } = useStep(step)
  return (
    <TimedCard
      step={step}
      minutes={step.minutes}
      under={askOf(step, state.header)}
      doing={step.by === 'vacuum' ? 'Under vacuum' : 'Standing'}
      sees={['clear', 'a few bubbles', 'still full of air']}
    />
  )
}

export function RestCard({ step }: { step: KindOf<'rest'> }) {
  const { state } = useStep(step)
  return (
    <TimedCard
      step={step}
      minutes={step.hours * 60}
      under={askOf(step, state.header)}
      doing="Resting"
      sees={['unchanged', 'thicker', 'separating']}
      why="The structure settles meanwhile: later checks count, earlier ones do not."
    />
  )
}
