import './weigh.css'
import { useFormat } from '../../../app/format'
import { latePart } from '../../../app/late-part'
import { statusOf } from '../../../batch/progress'
import { Button } from '../../../parts/button'
import { Card } from '../../../parts/card'
import { Horn } from '../../../parts/horn'
import { focusField } from '../focus-field'
import { Messages } from '../messages'
import { hornBleedPx, isNarrow } from '../narrow'
import { ReadingHero } from '../reading-hero'
import { useRun } from '../run-context'
import { WeighHead } from './weigh-head'

const Forewarning = latePart(() => import('./forewarning'), 'Forewarning')
const SecondPerson = latePart(() => import('./second-person'), 'SecondPerson')

/** The card of a weighing: what, from which lot, how much is on the balance and how far it is from its band. */
export function WeighCard() {
  const run = useRun()
  const format = useFormat()
  const weighing = run.weighing.value
  const planned = run.planned.value
  if (weighing === null || planned === null) return null
  const { state } = run.handle.view.value
  const status = statusOf(state, planned.id)
  const judged = run.judged.value
  const mass = (massUg: number) => format.mass(massUg, weighing.stepUg)
  return (
    <Card lip="action" labelledBy="step-heading" class="eye">
      <WeighHead />
      <Messages gates={run.gates.value} />
      <ReadingHero />
      {judged?.state === 'over' && !weighing.inCup && <Forewarning key={planned.id} />}
      <Horn
        netUg={judged?.netUg ?? 0}
        targetUg={weighing.leftUg}
        lowUg={weighing.leftLowUg}
        highUg={weighing.leftHighUg}
        format={mass}
        state={judged?.state ?? 'to-go'}
        bleedPx={hornBleedPx()}
        heightPx={isNarrow() ? 32 : 60}
      />
      {planned.step.secondPerson && <SecondPerson />}
      <WeighActs part={status === 'part'} />
    </Card>
  )
}

function WeighActs({ part }: { part: boolean }) {
  const run = useRun()
  const { mode } = run.draft.value
  const toggle = (to: 'by-difference' | 'cumulative') => {
    run.setMode(mode === to ? 're-tare' : to)
    focusField(run.activeField.value)
  }
  return (
    <div class="eye-acts">
      <Button
        icon="diff"
        label="By difference"
        pressed={mode === 'by-difference'}
        onPress={() => toggle('by-difference')}
      />
      <Button icon="plus" label="Cumulative" pressed={mode === 'cumulative'} onPress={() => toggle('cumulative')} />
      {part ? (
        <Button icon="flag" label="Leave it short" onPress={() => open(run, 'leave-short')} />
      ) : (
        <Button icon="pencil" label="Note" onPress={() => open(run, 'note')} />
      )}
    </div>
  )
}

function open(run: ReturnType<typeof useRun>, name: 'leave-short' | 'note'): void {
  run.sheet.value = { name }
}
