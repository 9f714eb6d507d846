import { meantBy } from '../../../batch/absurd'
import { basisWords } from '../../../batch/entry-phrases'
import type { Check } from '../../../batch/formula'
import { needsUnit, unitOf } from '../../../batch/how-read'
import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { Choice } from '../../../parts/choice'
import { TextField } from '../../../parts/form'
import { HeroNumber, StateLine } from '../../../parts/hero'
import { SayLine } from '../../../parts/say-line'
import { TypedField } from '../typed-field'
import { NoteAct, type Primary, ProcessLayout } from './layout'
import { MeantButton } from './meant-button'
import { errorOf, useStep } from './use-step'
import { type Verdict, verdictOf } from './verdict'

/** One check: its value on its basis, at what temperature, and how it stands to its limits. */
export function MeasureCard({ step }: { step: KindOf<'measure'> }) {
  const { state } = useStep(step)
  const check = state.header.revision.specification.find(({ id }) => id === step.check)
  if (check === undefined) return null
  return check.limits === undefined && isSeen(check) ? (
    <SeenCard step={step} check={check} />
  ) : (
    <ValueCard step={step} check={check} />
  )
}

const isSeen = ({ property }: Check): boolean =>
  property === 'appearance' || property === 'odour' || property === 'other'

function ValueCard({ step, check }: { step: KindOf<'measure'>; check: Check }) {
  const tools = useStep(step)
  const { run, state, format, vessel } = tools
  const value = tools.number('value', check.property === 'viscosity' ? 'viscosity' : undefined)
  const sampleC = tools.number('sampleC', 'temperature')
  const taken = tools.mass('sample')
  const verdict: Verdict = value.kind === 'number' ? verdictOf(value.value, check.limits) : 'open'
  const meant = value.kind === 'number' ? meantBy(check.property, value.value) : undefined
  const known = unitOf(check)
  const unit = known ?? tools.text('unit').trim()
  const record = async () => {
    if (value.kind !== 'number') return
    const done = await run.act(
      {
        do: 'measure',
        result: {
          step: step.id,
          check: check.id,
          property: check.property,
          label: check.label,
          value: value.value,
          vessel,
          ...(unit === '' ? {} : { unit }),
          ...(check.basis === undefined ? {} : { basis: check.basis }),
          ...(sampleC.kind === 'number' ? { sampleC: sampleC.value } : {}),
          ...(taken.kind === 'number' && taken.value > 0 ? { sampleUg: taken.value } : {}),
          ...(check.limits === undefined ? {} : { good: verdict === 'within' }),
        },
      },
      `${check.label} ${format.number(value.value)}`,
    )
    if (done) tools.clear('value', 'sampleC', 'sample', 'unit')
  }
  const primary: Primary =
    meant !== undefined
      ? { label: 'Record', sub: 'a pH ends at 14', closed: true }
      : value.kind === 'number'
        ? { label: `Record ${format.number(value.value)} ${unit}`.trim(), icon: 'check', onPress: () => void record() }
        : { label: 'Record', sub: 'type what the instrument shows', closed: true }
  return (
    <ProcessLayout
      under={[check.method, basisWords(check.basis, { percent: (fraction) => format.percent(fraction, 0) })]
        .filter(Boolean)
        .join(', ')}
      gates={run.gates.value}
      pad
      side={
        <div class="process-fields">
          <TypedField
            name="value"
            label={check.label}
            unit={unit}
            error={errorOf(value)}
            onEnter={() => void record()}
          />
          {known === undefined && needsUnit(check.property) && (
            <TextField label="Unit" value={tools.text('unit')} onChange={(text) => run.type('unit', text)} />
          )}
          <TypedField name="sampleC" label="Sample at" unit="°C" error={errorOf(sampleC)} />
          <TypedField name="sample" label="Taken out" unit="g" error={errorOf(taken)} />
        </div>
      }
      why={
        sampleC.kind === 'number' && sampleC.value > 30
          ? 'Above 30 °C the reading drifts: cool the sample first.'
          : undefined
      }
      acts={<NoteAct />}
      primary={primary}
    >
      <HeroNumber text={tools.text('value') || '–'} unit={unit} size="range" empty={value.kind !== 'number'} />
      {meant === undefined ? (
        <StateLine
          state={verdict === 'within' ? 'within' : verdict === 'open' ? 'to-go' : 'over'}
          text={verdictWords(verdict)}
        />
      ) : (
        <MeantButton meant={meant} />
      )}
      {check.limits && <p class="process-fact">Good from {askOf(step, state.header)}</p>}
    </ProcessLayout>
  )
}

function verdictWords(verdict: Verdict): string {
  switch (verdict) {
    case 'open':
      return 'not read yet'
    case 'within':
      return 'within its limits'
    case 'below':
      return 'below its limits'
    case 'above':
      return 'above its limits'
  }
}

function SeenCard({ step, check }: { step: KindOf<'measure'>; check: Check }) {
  const tools = useStep(step)
  const { run } = tools
  const good = tools.text('good')
  const text = tools.text('text')
  const record = () =>
    void run.act(
      {
        do: 'measure',
        result: {
          step: step.id,
          check: check.id,
          property: check.property,
          label: check.label,
          text: text.trim() || (good === 'yes' ? (check.expected ?? 'as expected') : 'not as expected'),
          vessel: tools.vessel,
          good: good === 'yes',
        },
      },
      check.label,
    )
  return (
    <ProcessLayout
      under={check.method ?? ''}
      gates={run.gates.value}
      acts={<NoteAct />}
      primary={{
        label: `Record ${check.label.toLowerCase()}`,
        icon: 'check',
        closed: good === '',
        sub: good === '' ? 'say how it is' : undefined,
        onPress: record,
      }}
    >
      <SayLine>{check.expected ? `Expected: ${check.expected}` : check.label}</SayLine>
      <Choice
        label="How is it?"
        value={good === '' ? undefined : good}
        options={[
          { value: 'yes', label: 'As expected' },
          { value: 'no', label: 'Not as expected' },
        ]}
        onChange={(value) => run.type('good', value)}
      />
      <TextField label="In your own words" value={text} onChange={(value) => run.type('text', value)} rows={3} />
    </ProcessLayout>
  )
}
