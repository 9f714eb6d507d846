import { useEffect, useState } from 'preact/hooks'
import { isDone } from '../../../batch/progress'
import { titleOf } from '../../../batch/wording'
import { Card } from '../../../parts/card'
import { useRun } from '../run-context'
import { StepHeading } from './step-heading'
import { WeighCard } from './weigh'

/**
 * The card of the step in hand. A fresh one for each step, so that nothing chosen for one is shown for another; but one
 * weighing follows the other on the same card, which holds nothing of its own.
 */
export function CardOf() {
  const run = useRun()
  const planned = run.planned.value
  if (planned?.step.kind === 'weigh' && !isDone(run.handle.view.value.state, planned.id)) return <WeighCard />
  return <LateCard key={planned?.id ?? ''} />
}

type ProcessModule = typeof import('./process')

/** Fetches every other card once the first screen stands, so that they are there when they are needed. */
export const warmCards = (): Promise<ProcessModule> => import('./process')

function LateCard() {
  const run = useRun()
  const [cards, setCards] = useState<ProcessModule | null>(null)
  useEffect(() => {
    void warmCards().then(setCards)
  }, [])
  if (cards !== null) return <cards.OtherCard />
  const planned = run.planned.value
  return (
    <Card lip="action" labelledBy="step-heading" class="eye">
      <StepHeading text={planned ? titleOf(planned.step, run.handle.view.value.state.header) : ''} />
    </Card>
  )
}
