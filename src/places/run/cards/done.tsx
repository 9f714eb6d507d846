import { nextStep } from '../../../batch/progress'
import { titleOf, underOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { Card } from '../../../parts/card'
import { Messages } from '../messages'
import { useRun } from '../run-context'
import { EntryList } from './entry-list'
import { StepHeading } from './step-heading'

/** A step that is done: what was recorded for it, to look at or strike out, and the way on. */
export function DoneCard() {
  const run = useRun()
  const planned = run.planned.value
  if (planned === null) return null
  const { state } = run.handle.view.value
  const next = nextStep(state)
  const skipped = state.steps.get(planned.id)?.finished?.how === 'skipped'
  return (
    <Card lip={skipped ? 'action' : 'within'} labelledBy="step-heading" class="eye">
      <header class="eye-head">
        <div class="eye-title">
          <StepHeading text={titleOf(planned.step, state.header)} />
          <p class="eye-under">{skipped ? underOf(state, planned) : 'Done. This is what was recorded.'}</p>
        </div>
      </header>
      <Messages gates={[]} />
      <EntryList />
      {next && (
        <Button
          kind="filled"
          size="primary"
          icon="arrow-right"
          label={`On to ${titleOf(next.step, state.header)}`}
          onPress={() => run.take(next.id)}
          full
          class="eye-on"
        />
      )}
    </Card>
  )
}
