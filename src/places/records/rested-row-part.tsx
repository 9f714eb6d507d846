import type { Format } from '../../app/format'
import { basisWords } from '../../batch/entry-phrases'
import { foamMinutes, scaleOf } from '../../batch/how-read'
import { Button } from '../../parts/button'
import { Choice } from '../../parts/choice'
import { TextField } from '../../parts/form'
import { Notice } from '../../parts/notice'
import { NumberField } from '../../parts/number-field'
import { limitsWords } from './limits-words'
import { type RestedForm, unitOfRow } from './rested-form'
import { mostReadings, type RestedRow, readingFields } from './rested-row'
import { RestedSoFar } from './rested-so-far'

interface RowProps {
  row: RestedRow
  form: RestedForm
  format: Format
  wrong: (field: string) => string | undefined
}

/** One check: what is asked for, its fields, and how it stands to its limits as far as it is entered. */
export function RestedRowPart(props: RowProps) {
  const { row, form, format } = props
  const { check } = row
  const hint = check && [check.method, basisWords(check.basis, { percent: (part) => format.percent(part, 0) })]
  return (
    <section class="rested-row" aria-label={check?.label ?? 'Something else'}>
      <header class="rested-head">
        <h3>{check?.label ?? 'Something else'}</h3>
        <p class="rested-limits">{limitsWords(check, format)}</p>
        {hint && <p class="rested-hint">{hint.filter(Boolean).join(', ')}</p>}
      </header>
      <div class="rested-fields">
        <Fields {...props} />
      </div>
      <RestedSoFar row={row} form={form} format={format} />
    </section>
  )
}

function Fields(props: RowProps) {
  switch (props.row.kind) {
    case 'number':
      return (
        <>
          <Readings {...props} />
          <NumberOf {...props} field="sampleC" label="Sample at" unit="°C" />
        </>
      )
    case 'viscosity':
      return (
        <>
          <Readings {...props} />
          <TextOf {...props} field="spindle" label="Spindle" />
          <NumberOf {...props} field="rpm" label="Speed" unit="rpm" />
          <NumberOf {...props} field="torque" label="Torque" unit="%" />
          <NumberOf {...props} field="sampleC" label="Sample at" unit="°C" />
        </>
      )
    case 'density':
      return <DensityFields {...props} />
    case 'foam':
      return (
        <>
          <Readings {...props} label="At once" />
          <NumberOf {...props} field="later" label={`After ${foamMinutes} min`} unit={unitOfRow(props.row)} />
        </>
      )
    case 'feel': {
      const { least, most, low, high } = scaleOf(props.row.check)
      return (
        <>
          <p class="rested-hint rested-wide">
            {least}: {low}. {most}: {high}.
          </p>
          <Readings {...props} label="Step" />
        </>
      )
    }
    case 'seen':
      return <SeenFields {...props} />
    case 'spin':
      return <SpinFields {...props} />
    case 'free':
      return (
        <>
          <TextOf {...props} field="label" label="What was checked" />
          <Readings {...props} />
          <TextOf {...props} field="words" label="In words" />
        </>
      )
  }
}

interface FieldProps extends RowProps {
  field: string
  label: string
  unit?: string | undefined
  placeholder?: string | undefined
}

const NumberOf = ({ row, form, field, label, unit, wrong }: FieldProps) => (
  <NumberField
    label={label}
    value={form.textsOf(row.key)(field)}
    onChange={(text) => form.set(row.key, field, text)}
    unit={unit}
    error={wrong(field)}
  />
)

const TextOf = ({ row, form, field, label, placeholder, wrong }: FieldProps) => (
  <TextField
    label={label}
    value={form.textsOf(row.key)(field)}
    onChange={(text) => form.set(row.key, field, text)}
    placeholder={placeholder}
    error={wrong(field)}
  />
)

/** One reading, and room for another as long as somebody wants one. */
function Readings(props: RowProps & { label?: string }) {
  const { row, form, label = 'Reading' } = props
  const text = form.textsOf(row.key)
  const fields = readingFields(text)
  const known = unitOfRow(row)
  const asksUnit = known === undefined && row.kind !== 'feel' && row.check?.property !== 'pH'
  return (
    <>
      {fields.map((field, index) => (
        <NumberOf
          key={field}
          {...props}
          field={field}
          label={fields.length === 1 ? label : `${label} ${index + 1}`}
          unit={known}
        />
      ))}
      {asksUnit && <TextOf {...props} field="unit" label="Unit" />}
      {fields.length < mostReadings && (
        <span class="rested-again">
          <Button
            icon="plus"
            label="Read again"
            onPress={() => form.set(row.key, 'count', String(fields.length + 1))}
          />
        </span>
      )}
    </>
  )
}

function DensityFields(props: RowProps) {
  const { row, form } = props
  const weighed = form.textsOf(row.key)('way') === 'weighed'
  return (
    <>
      <div class="rested-wide">
        <Choice
          label="How it was found"
          value={weighed ? 'weighed' : 'figure'}
          options={[
            { value: 'figure', label: 'Read off' },
            { value: 'weighed', label: 'Mass and volume' },
          ]}
          onChange={(way) => form.set(row.key, 'way', way)}
        />
      </div>
      {weighed ? (
        <>
          <NumberOf {...props} field="mass" label="Mass" unit="g" />
          <NumberOf {...props} field="volume" label="Volume" unit="mL" />
        </>
      ) : (
        <Readings {...props} />
      )}
      <NumberOf {...props} field="sampleC" label="Sample at" unit="°C" />
    </>
  )
}

function SeenFields(props: RowProps) {
  const { row, form, wrong } = props
  const difference = form.textsOf(row.key)('difference')
  return (
    <div class="rested-wide rested-seen">
      <Choice
        label="Beside the standard"
        value={difference === '' ? undefined : difference}
        options={[
          { value: 'none', label: 'As the standard' },
          { value: 'slight', label: 'Slightly different' },
          { value: 'clear', label: 'Clearly different' },
        ]}
        onChange={(value) => form.set(row.key, 'difference', value)}
      />
      {wrong('difference') && <Notice kind="over" title={wrong('difference') ?? ''} live />}
      <TextOf {...props} field="words" label="What you found" placeholder={row.check?.expected} />
    </div>
  )
}

function SpinFields(props: RowProps) {
  const { row, form, wrong } = props
  const text = form.textsOf(row.key)
  return (
    <>
      <NumberOf {...props} field="spin" label="Spun at" unit={text('spinBy') === 'g' ? '× g' : 'rpm'} />
      <NumberOf {...props} field="minutes" label="For" unit="min" />
      <div class="rested-wide rested-seen">
        <Choice
          label="Counted in"
          value={text('spinBy') === 'g' ? 'g' : 'rpm'}
          options={[
            { value: 'rpm', label: 'rpm' },
            { value: 'g', label: '× g' },
          ]}
          onChange={(by) => form.set(row.key, 'spinBy', by)}
        />
        <Choice
          label="What it did"
          value={text('separated') === '' ? undefined : text('separated')}
          options={[
            { value: 'no', label: 'Did not separate' },
            { value: 'yes', label: 'Separated' },
          ]}
          onChange={(value) => form.set(row.key, 'separated', value)}
        />
        {wrong('separated') && <Notice kind="over" title={wrong('separated') ?? ''} live />}
      </div>
    </>
  )
}
