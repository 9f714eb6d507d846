import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { TextField } from '../../../parts/form'
import { TypedField } from '../typed-field'
import { TakenCard } from './taken'
import { errorOf, useStep, valueOr } from './use-step'

/** Jars taken from the batch. */
export function SampleCard({ step }: { step: KindOf<'sample'> }) {
  const tools = useStep(step)
  const { run, state, format, vessel } = tools
  const jars = tools.number('jars')
  const count = Math.round(valueOr(jars, step.jars))
  const planUg = count * step.eachUg
  const mass = tools.mass('mass')
  const massUg = valueOr(mass, planUg)
  const purpose = tools.text('purpose') || 'retained sample'
  return (
    <TakenCard
      step={step}
      under={`${askOf(step, state.header)}, ${format.massWithUnit(step.eachUg)} each`}
      massUg={massUg}
      words={`${count} ${count === 1 ? 'jar' : 'jars'}`}
      bad={jars.kind === 'bad' || mass.kind === 'bad'}
      send={(words) => run.act({ do: 'sample', step: step.id, vessel, massUg, jars: count, purpose }, words)}
      fields={
        <>
          <TypedField name="jars" label="Jars" placeholder={String(step.jars)} error={errorOf(jars)} />
          <TypedField name="mass" label="In all" unit="g" placeholder={format.mass(planUg)} error={errorOf(mass)} />
        </>
      }
    >
      <TextField
        label="What for"
        value={tools.text('purpose')}
        placeholder="retained sample"
        onChange={(text) => run.type('purpose', text)}
      />
    </TakenCard>
  )
}
