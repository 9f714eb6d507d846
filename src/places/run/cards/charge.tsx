import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { EmptyingCard } from './emptying'
import { useStep } from './use-step'

/** A cup tipped into its vessel. */
export function ChargeCard({ step }: { step: KindOf<'charge'> }) {
  const { state } = useStep(step)
  return <EmptyingCard step={step} from={step.cup} under={askOf(step, state.header)} why={howTo(step.rate)} />
}

function howTo(rate: KindOf<'charge'>['rate']): string {
  switch (rate) {
    case 'sprinkle':
      return 'Sprinkle it slowly over the whole surface while it stirs.'
    case 'stream':
      return 'Pour it in a thin stream into the moving liquid.'
    case 'portions':
      return 'Add it in portions, each one taken up before the next.'
    case 'all at once':
      return 'All at once.'
  }
}
