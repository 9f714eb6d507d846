import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { massIn } from '../../../trade/ledger'
import { TypedField } from '../typed-field'
import { TakenCard } from './taken'
import { errorOf, useStep, valueOr } from './use-step'

/** The batch filled into its packs. */
export function FillCard({ step }: { step: KindOf<'fill'> }) {
  const tools = useStep(step)
  const { run, state, format, vessel } = tools
  const units = tools.number('units')
  const count = Math.round(valueOr(units, step.units ?? 1))
  const heldUg = massIn(state.ledger, vessel)
  const planUg = Math.min(step.eachUg === undefined ? heldUg : count * step.eachUg, heldUg)
  const mass = tools.mass('mass')
  const massUg = valueOr(mass, planUg)
  return (
    <TakenCard
      step={step}
      under={[askOf(step, state.header), step.eachUg === undefined ? '' : `${format.massWithUnit(step.eachUg)} each`]
        .filter(Boolean)
        .join(', ')}
      massUg={massUg}
      words={`${count} ${count === 1 ? 'unit' : 'units'}`}
      bad={units.kind === 'bad' || mass.kind === 'bad'}
      send={(words) => run.act({ do: 'fill', step: step.id, vessel, massUg, units: count }, words)}
      fields={
        <>
          <TypedField name="units" label="Units" placeholder={String(step.units ?? 1)} error={errorOf(units)} />
          <TypedField name="mass" label="In all" unit="g" placeholder={format.mass(planUg)} error={errorOf(mass)} />
        </>
      }
    />
  )
}
