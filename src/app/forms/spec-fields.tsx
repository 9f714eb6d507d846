import './spec-fields.css'
import type { ComponentProps } from 'preact'
import { Switch } from '../../parts/choice.tsx'
import { SelectField, TextField } from '../../parts/form.tsx'
import { Icon } from '../../parts/icon.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { PillButton } from '../../parts/pill-button.tsx'
import type { FieldOption, FieldSpec, Values } from './field-spec.ts'
import { PickField } from './pick-field.tsx'
import { type NumericSpec, settledUnit } from './settle-typed.ts'
import { useSettled } from './use-settled.ts'

interface SpecFieldsProps {
  specs: readonly FieldSpec[]
  values: Values
  /** Sentences by field. */
  errors: Readonly<Record<string, string>>
  onChange: (key: string, text: string) => void
  /** A number was left: the moment to work out a typed sum. */
  onLeave?: ((key: string) => void) | undefined
}

/** The fields of a plain form, in two columns where there is room. */
export const SpecFields = ({ specs, values, errors, onChange, onLeave }: SpecFieldsProps) => (
  <div class="spec-fields">
    {specs.map((spec) => (
      <div key={spec.key} class={isWide(spec) ? 'spec-wide' : 'spec-half'} onFocusOut={() => onLeave?.(spec.key)}>
        <SpecField
          spec={spec}
          value={values[spec.key] ?? ''}
          error={errors[spec.key]}
          onChange={(text) => onChange(spec.key, text)}
        />
      </div>
    ))}
  </div>
)

interface SpecFieldProps {
  spec: FieldSpec
  value: string
  error: string | undefined
  onChange: (text: string) => void
}

const SpecField = ({ spec, value, error, onChange }: SpecFieldProps) => {
  const { label, hint } = spec
  const shared = {
    label: spec.optional && spec.kind !== 'switch' ? `${label} (optional)` : label,
    hint,
    error,
    value,
    onChange,
  }
  switch (spec.kind) {
    case 'text':
      return <TextField {...shared} rows={spec.rows} />
    case 'list':
    case 'parts':
      return <TextField {...shared} rows={3} />
    case 'date':
      return <TextField {...shared} type="date" />
    case 'number':
    case 'mass':
      return <NumericField {...shared} spec={spec} />
    case 'switch':
      return <Switch label={label} hint={hint} checked={value === 'yes'} onChange={(on) => onChange(on ? 'yes' : '')} />
    case 'many':
      return <ManyField label={label} value={value} options={spec.options} onChange={onChange} />
    case 'choice': {
      const none = { value: '', label: spec.optional ? 'not stated' : 'choose' }
      if (spec.find) return <PickField {...shared} options={spec.optional ? [none, ...spec.options] : spec.options} />
      const options = spec.optional || value === '' ? [none, ...spec.options] : spec.options
      return <SelectField {...shared} options={options} />
    }
  }
}

interface NumericFieldProps extends Omit<ComponentProps<typeof NumberField>, 'unit'> {
  spec: NumericSpec
}

const NumericField = ({ spec, ...field }: NumericFieldProps) => {
  const settled = useSettled(field.value, settledUnit(spec))
  const unit = spec.kind === 'mass' ? 'g' : spec.percent ? '%' : spec.unit
  return <NumberField {...field} hint={settled ?? field.hint} unit={unit} />
}

interface ManyFieldProps {
  label: string
  value: string
  options: readonly FieldOption[]
  onChange: (text: string) => void
}

const ManyField = ({ label, value, options, onChange }: ManyFieldProps) => {
  const chosen = value.split('\n').filter((each) => each !== '')
  const toggle = (option: string) =>
    onChange((chosen.includes(option) ? chosen.filter((each) => each !== option) : [...chosen, option]).join('\n'))
  return (
    <details class="spec-many">
      <summary>
        {label}
        <span class="spec-none">{chosen.length === 0 ? 'nothing' : `${chosen.length} chosen`}</span>
        <Icon name="chevron-down" />
      </summary>
      <div class="spec-pills">
        {options.length === 0 && <p class="spec-none">nothing to choose from yet</p>}
        {options.map((option) => (
          <PillButton
            key={option.value}
            text={option.label}
            selected={chosen.includes(option.value)}
            onPress={() => toggle(option.value)}
          />
        ))}
      </div>
    </details>
  )
}

const isWide = (spec: FieldSpec): boolean =>
  spec.kind === 'switch' ||
  spec.kind === 'list' ||
  spec.kind === 'many' ||
  spec.kind === 'parts' ||
  (spec.kind === 'text' && spec.rows !== undefined)
