import { useEffect, useState } from 'preact/hooks'
import { titleOf } from '../../batch/wording'
import { Card } from '../../parts/card'
import { StepHeading } from './cards/step-heading'
import { useRun } from './run-context'

type DeviationModule = typeof import('./deviation')

/** The panel is fetched after the first screen, before any reading can be over. */
export const warmDeviation = (): Promise<DeviationModule> => import('./deviation')

/** What went over on the left, the ways on beside it. */
export function DeviationPlace() {
  const run = useRun()
  const [module, setModule] = useState<DeviationModule | null>(null)
  useEffect(() => {
    void warmDeviation().then(setModule)
  }, [])
  const planned = run.planned.value
  if (module !== null) return <module.Deviation />
  return (
    <Card lip="over" labelledBy="step-heading" class="eye">
      <StepHeading text={planned ? titleOf(planned.step, run.handle.view.value.state.header) : ''} />
    </Card>
  )
}
