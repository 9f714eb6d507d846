import { NumberEntry } from '../../app/forms/number-entry'
import { Button } from '../../parts/button'
import { SelectField, TextField } from '../../parts/form'
import type { ReworkItem, ReworkKind } from './rework-draft'
import type { ReworkForm } from './rework-form'

export const reworkNames: Readonly<Record<ReworkKind, string>> = {
  add: 'Add material',
  mix: 'Mix',
  adjust: 'Adjust',
  heat: 'Heat',
  cool: 'Cool',
  hold: 'Hold',
  measure: 'Measure',
  rest: 'Rest',
  fill: 'Fill again',
  note: 'Something else',
}

interface StepProps {
  item: ReworkItem
  at: number
  form: ReworkForm
  wrong: (field: string) => string | undefined
}

/** One step of a rework with the fields of its kind. */
export function ReworkStepPart(props: StepProps) {
  const { item, at, form } = props
  return (
    <li class="rework-step">
      <header class="rework-step-head">
        <h3>
          {at}. {reworkNames[item.kind]}
        </h3>
        <Button kind="plain" icon="trash" label={`Leave step ${at} out`} onPress={() => form.remove(item.key)} />
      </header>
      <div class="rework-fields">
        <Fields {...props} />
      </div>
    </li>
  )
}

function Fields(props: StepProps) {
  const { choices } = props.form
  switch (props.item.kind) {
    case 'add':
      return (
        <>
          <Select
            {...props}
            field="what"
            label="What"
            options={[{ value: '', label: 'Something else: its name' }, ...choices.addable]}
          />
          {(props.item.texts.what ?? '') === '' && <Words {...props} field="name" label="Its name" />}
          <Figure {...props} field="mass" label="How much" unit="g" />
        </>
      )
    case 'mix':
      return (
        <>
          <Words {...props} field="tool" label="With" placeholder={choices.tools[0] ?? 'spatula'} />
          <Figure {...props} field="minutes" label="For" unit="min" />
          <Figure {...props} field="rpm" label="Speed, if it matters" unit="rpm" />
        </>
      )
    case 'adjust':
      return <Select {...props} field="what" label="What" options={choices.adjustments} />
    case 'heat':
    case 'cool':
      return <Figure {...props} field="targetC" label="To" unit="°C" />
    case 'hold':
      return <Figure {...props} field="minutes" label="For" unit="min" />
    case 'rest':
      return <Figure {...props} field="hours" label="For" unit="h" />
    case 'measure':
      return <Select {...props} field="check" label="Which check" options={choices.checks} />
    case 'note':
      return <Words {...props} field="text" label="What is to be done" />
    case 'fill':
      return <p class="rested-hint">Units and mass are said at the bench.</p>
  }
}

interface FieldProps extends StepProps {
  field: string
  label: string
}

const Figure = ({ item, form, field, label, unit, wrong }: FieldProps & { unit: string }) => (
  <NumberEntry
    label={label}
    unit={unit}
    value={item.texts[field] ?? ''}
    error={wrong(field)}
    onChange={(text) => form.set(item.key, field, text)}
  />
)

const Words = ({ item, form, field, label, placeholder, wrong }: FieldProps & { placeholder?: string }) => (
  <TextField
    label={label}
    value={item.texts[field] ?? ''}
    placeholder={placeholder}
    error={wrong(field)}
    onChange={(text) => form.set(item.key, field, text)}
  />
)

interface SelectProps extends FieldProps {
  options: readonly { readonly value: string; readonly label: string }[]
}

const Select = ({ item, form, field, label, options, wrong }: SelectProps) => (
  <SelectField
    label={label}
    value={item.texts[field] ?? options[0]?.value ?? ''}
    options={options}
    error={wrong(field)}
    onChange={(text) => form.set(item.key, field, text)}
  />
)
