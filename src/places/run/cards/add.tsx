import type { KindOf } from '../../../batch/step'
import { SelectField, TextField } from '../../../parts/form'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { Caution } from '../../../parts/notice'
import { bandOf } from '../../../trade/tolerance'
import { TypedField } from '../typed-field'
import { hazardIcon } from './hazard-icon'
import { NoteAct, type Primary, ProcessLayout } from './layout'
import { errorOf, useStep } from './use-step'

/** What a rework adds: so much of one material, from one lot, into its vessel. */
export function AddCard({ step }: { step: KindOf<'add'> }) {
  const tools = useStep(step)
  const { run, state, format, vesselName } = tools
  const line = state.plan.byId.get(step.id)?.line
  const material = line?.material ?? run.app.catalogue.materials.value.get(step.materialId ?? '')
  const stepUg = line?.balance.stepUg ?? 10_000
  const mass = tools.mass('mass')
  const reason = tools.text('reason').trim()
  const band = bandOf(step.massUg, undefined, stepUg)
  const isOff = mass.kind === 'number' && (mass.value < band.lowUg || mass.value > band.highUg)
  const lots = line?.lots ?? [...run.app.catalogue.lots.value.values()].filter((lot) => lot.materialId === material?.id)
  const lot = tools.text('lot') || (line ? (state.lotsOfLine.get(line.line.id)?.[0] ?? '') : '')
  const record = async () => {
    if (mass.kind !== 'number') return
    const more = {
      ...(lot === '' ? {} : { lot }),
      ...(reason === '' ? {} : { reason }),
      ...(line === undefined && material ? { material } : {}),
    }
    const words = `${step.name} ${format.massWithUnit(mass.value, stepUg)}`
    if (await run.act({ do: 'add', step: step.id, netUg: mass.value, ...more }, words)) tools.clear('mass', 'reason')
  }
  const primary: Primary =
    mass.kind !== 'number'
      ? { label: 'Record', sub: 'type what the balance shows', closed: true }
      : isOff && reason === ''
        ? { label: 'Record', sub: 'say why it is not what was asked for', closed: true }
        : {
            label: `Record ${format.massWithUnit(mass.value, stepUg)}`,
            sub: step.name,
            icon: 'check',
            onPress: () => void record(),
          }
  return (
    <ProcessLayout
      under={`${format.massWithUnit(step.massUg, stepUg)} into ${vesselName.toLowerCase()}`}
      gates={run.gates.value}
      pad
      side={
        <div class="process-fields">
          <TypedField
            name="mass"
            label={step.name}
            unit="g"
            error={errorOf(mass)}
            placeholder={format.mass(step.massUg, stepUg)}
            onEnter={() => void record()}
          />
          {lots.length > 0 && (
            <SelectField
              label="Lot"
              value={lot}
              options={[{ value: '', label: 'not known' }, ...lots.map(({ id, code }) => ({ value: id, label: code }))]}
              onChange={(value) => run.type('lot', value)}
            />
          )}
          {isOff && (
            <TextField label="Why so much" value={tools.text('reason')} onChange={(text) => run.type('reason', text)} />
          )}
        </div>
      }
      acts={<NoteAct />}
      primary={primary}
    >
      <HeroNumber
        text={tools.text('mass') || format.mass(step.massUg, stepUg)}
        unit="g"
        size="range"
        empty={mass.kind !== 'number'}
      />
      <StateLine
        state={isOff ? 'over' : mass.kind === 'number' ? 'within' : 'to-go'}
        text={isOff ? 'not what was asked for' : `asked for ${format.massWithUnit(step.massUg, stepUg)}`}
      />
      {material?.hazards && <Caution icon={hazardIcon(material.hazards.kind)} text={material.hazards.caution} />}
    </ProcessLayout>
  )
}
