import { addressOf } from '../../../app/routes'
import { Button } from '../../../parts/button'
import { Card } from '../../../parts/card'
import { Messages } from '../messages'
import { useRun } from '../run-context'
import { StepHeading } from './step-heading'

/** Nothing is left to do: decide about the batch, or read what was recorded. */
export function AllDone() {
  const run = useRun()
  const { state } = run.handle.view.value
  const inHand = state.stage === 'in-hand'
  return (
    <Card lip={inHand ? 'action' : 'within'} labelledBy="step-heading" class="eye">
      <StepHeading text={inHand ? 'Every step is done' : `This batch is ${state.stage}`} />
      <p class="eye-under">
        {inHand
          ? 'Say what becomes of the batch: accept, hold, rework or reject. Checks that come later can still be written down.'
          : 'Its record can be read; later checks and notes can still be added there.'}
      </p>
      <Messages gates={[]} />
      <div class="eye-acts">
        <Button icon="file-text" label="Read the record" href={addressOf({ place: 'records', batch: run.handle.id })} />
        {inHand && (
          <Button
            kind="filled"
            icon="flag"
            label="Close the batch"
            onPress={() => {
              run.sheet.value = { name: 'close' }
            }}
          />
        )}
      </div>
    </Card>
  )
}
