import type { KindOf } from '../../../batch/step'
import { TextField } from '../../../parts/form'
import { SayLine } from '../../../parts/say-line'
import { ProcessLayout } from './layout'
import { SecondPerson } from './second-person'
import { useStep } from './use-step'

/** Cleaning down: the oil goes in a wipe, not down the sink. */
export function CleanCard({ step }: { step: KindOf<'clean'> }) {
  return <PlainCard step={step} say="Wipe out wax and oil first: neither goes down the sink." done="Clean: done" />
}

/** Something to look at or do that has no figure. */
export function NoteCard({ step }: { step: KindOf<'note'> }) {
  return <PlainCard step={step} say={step.text} done="Done" />
}

function PlainCard({ step, say, done }: { step: KindOf<'clean'> | KindOf<'note'>; say: string; done: string }) {
  const { run, text } = useStep(step)
  const finish = () => {
    const saw = text('saw').trim()
    const checkedBy = text('checkedBy')
    void run.act(
      {
        do: 'finish-step',
        step: step.id,
        ...(saw === '' ? {} : { saw }),
        ...(checkedBy === '' ? {} : { checkedBy }),
      },
      done,
    )
  }
  return (
    <ProcessLayout under="" gates={run.gates.value} primary={{ label: done, icon: 'check', onPress: finish }}>
      <SayLine>{say}</SayLine>
      <TextField
        label="What you saw, if anything"
        rows={3}
        value={text('saw')}
        onChange={(saw) => run.type('saw', saw)}
      />
      {step.secondPerson && <SecondPerson />}
    </ProcessLayout>
  )
}
