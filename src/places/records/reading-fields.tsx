import { NumberEntry } from '../../app/forms/number-entry'
import { Button } from '../../parts/button'
import { TextField } from '../../parts/form'
import { mostReadings, type RestedRow, type RowTexts, readingFields, unitOfRow } from './rested-row'

/** The texts of a row, wherever they are kept, and how its fields are led through. */
export interface RowForm {
  readonly row: RestedRow
  readonly text: RowTexts
  readonly set: (field: string, text: string) => void
  readonly wrong: (field: string) => string | undefined
  /** Leads to the next field; absent where Enter does nothing. */
  readonly onEnter?: (() => void) | undefined
  /** Told which field a pad beside the form types into. */
  readonly onField?: ((field: string, label: string) => void) | undefined
  readonly keyboard?: 'none' | 'decimal' | undefined
}

interface FieldProps {
  form: RowForm
  field: string
  label: string
  unit?: string | undefined
  hint?: string | undefined
  placeholder?: string | undefined
}

export const NumberOf = ({ form, field, label, unit, hint }: FieldProps) => (
  <div onFocusIn={() => form.onField?.(field, label)}>
    <NumberEntry
      label={label}
      value={form.text(field)}
      onChange={(text) => form.set(field, text)}
      unit={unit}
      hint={hint}
      error={form.wrong(field)}
      keyboard={form.keyboard}
      onEnter={form.onEnter}
    />
  </div>
)

export const TextOf = ({ form, field, label, placeholder }: FieldProps) => (
  <div onFocusIn={() => form.onField?.('', label)}>
    <TextField
      label={label}
      value={form.text(field)}
      onChange={(text) => form.set(field, text)}
      placeholder={placeholder}
      error={form.wrong(field)}
      onEnter={form.onEnter}
    />
  </div>
)

interface ReadingsProps {
  form: RowForm
  label?: string
  hint?: string | undefined
}

/** One reading, and room for another as long as somebody wants one. */
export function Readings({ form, label = 'Reading', hint }: ReadingsProps) {
  const { row, text, set } = form
  const fields = readingFields(text)
  const known = unitOfRow(row)
  const asksUnit = known === undefined && row.kind !== 'feel' && row.check?.property !== 'pH'
  return (
    <>
      {fields.map((field, index) => (
        <NumberOf
          key={field}
          form={form}
          field={field}
          label={fields.length === 1 ? label : `${label} ${index + 1}`}
          unit={known}
          hint={index === 0 ? hint : undefined}
        />
      ))}
      {asksUnit && <TextOf form={form} field="unit" label="Unit" />}
      {fields.length < mostReadings && (
        <span class="rested-again">
          <Button icon="plus" label="Read again" onPress={() => set('count', String(fields.length + 1))} />
        </span>
      )}
    </>
  )
}

/** A viscosity says nothing without spindle, speed, torque and temperature: they are written down with it. */
export const ViscosityFields = (props: ReadingsProps) => {
  const { form } = props
  return (
    <>
      <Readings {...props} />
      <TextOf form={form} field="spindle" label="Spindle" />
      <NumberOf form={form} field="rpm" label="Speed" unit="rpm" />
      <NumberOf form={form} field="torque" label="Torque" unit="%" />
      <NumberOf form={form} field="sampleC" label="Sample at" unit="°C" />
    </>
  )
}
