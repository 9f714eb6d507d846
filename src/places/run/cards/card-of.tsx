import { useEffect, useState } from 'preact/hooks'
import { isDone } from '../../../batch/progress'
import { titleOf } from '../../../batch/wording'
import { Card } from '../../../parts/card'
import { useRun } from '../run-context'
import { AllDone } from './all-done'
import { DoneCard } from './done'
import { StepHeading } from './step-heading'
import { WeighCard } from './weigh'

/** The card of the step in hand: to look at when it is done, else one for each kind of step. */
export function CardOf() {
  const run = useRun()
  const { state } = run.handle.view.value
  const planned = run.planned.value
  if (planned === null) return <AllDone />
  if (isDone(state, planned.id)) return <DoneCard />
  // A fresh card for each step, so that nothing chosen for one is shown for another.
  return planned.step.kind === 'weigh' ? <WeighCard key={planned.id} /> : <LateCard key={planned.id} />
}

type ProcessModule = typeof import('./process')

/** Fetches the cards of all other kinds once the first screen stands, so that they are there when they are needed. */
export const warmCards = (): Promise<ProcessModule> => import('./process')

function LateCard() {
  const run = useRun()
  const [cards, setCards] = useState<ProcessModule | null>(null)
  useEffect(() => {
    void warmCards().then(setCards)
  }, [])
  const planned = run.planned.value
  if (planned === null) return null
  if (cards !== null) return <cards.ProcessCard planned={planned} />
  return (
    <Card lip="action" labelledBy="step-heading" class="eye">
      <StepHeading text={titleOf(planned.step, run.handle.view.value.state.header)} />
    </Card>
  )
}
