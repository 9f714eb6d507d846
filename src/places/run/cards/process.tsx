import type { PlannedStep } from '../../../batch/plan'
import { AdjustCard } from './adjust'
import { ChargeCard } from './charge'
import { CombineCard } from './combine'
import { FillCard } from './fill'
import { CoolCard, HeatCard } from './heat'
import { DeaerateCard, HoldCard, HydrateCard, RestCard } from './hold'
import { MakeUpCard } from './make-up'
import { MeasureCard } from './measure'
import { MixCard } from './mix'
import { CleanCard, NoteCard } from './plain'
import { SampleCard } from './sample'

/** The cards of every kind of step but weighing, in one part that is fetched after the first screen. */
export function ProcessCard({ planned }: { planned: PlannedStep }) {
  const { step } = planned
  switch (step.kind) {
    case 'weigh':
      return null
    case 'charge':
      return <ChargeCard step={step} />
    case 'combine':
      return <CombineCard step={step} />
    case 'heat':
      return <HeatCard step={step} />
    case 'cool':
      return <CoolCard step={step} />
    case 'hold':
      return <HoldCard step={step} />
    case 'hydrate':
      return <HydrateCard step={step} />
    case 'mix':
      return <MixCard step={step} />
    case 'deaerate':
      return <DeaerateCard step={step} />
    case 'measure':
      return <MeasureCard step={step} />
    case 'adjust':
      return <AdjustCard step={step} />
    case 'make-up':
      return <MakeUpCard step={step} />
    case 'rest':
      return <RestCard step={step} />
    case 'sample':
      return <SampleCard step={step} />
    case 'fill':
      return <FillCard step={step} />
    case 'clean':
      return <CleanCard step={step} />
    case 'note':
      return <NoteCard step={step} />
  }
}
