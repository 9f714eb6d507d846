import type { PlannedStep } from '../../../batch/plan'
import { isDone } from '../../../batch/progress'
import { useRun } from '../run-context'
import { AdjustCard } from './adjust'
import { AllDone } from './all-done'
import { ChargeCard } from './charge'
import { CombineCard } from './combine'
import { DoneCard } from './done'
import { FillCard } from './fill'
import { CoolCard, HeatCard } from './heat'
import { DeaerateCard, HoldCard, HydrateCard, RestCard } from './hold'
import { MakeUpCard } from './make-up'
import { MeasureCard } from './measure'
import { MixCard } from './mix'
import { CleanCard, NoteCard } from './plain'
import { SampleCard } from './sample'

/** Every card but that of a weighing in hand: nothing left, a step that is done, a step of another kind. */
export function OtherCard() {
  const run = useRun()
  const planned = run.planned.value
  if (planned === null) return <AllDone />
  return isDone(run.handle.view.value.state, planned.id) ? <DoneCard /> : <ProcessCard planned={planned} />
}

/** The cards of every kind of step but weighing, in one part that is fetched after the first screen. */
function ProcessCard({ planned }: { planned: PlannedStep }) {
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
