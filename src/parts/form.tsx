import './form.css'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { Icon } from './icon.tsx'

/** What `Field` hands to its control: the id its label points at, and the sentences that describe it. */
interface FieldControl {
  id: string
  'aria-describedby': string | undefined
  'aria-invalid': true | undefined
}

interface Labelled {
  label: string
  hint?: string | undefined
  /** A sentence at the field: what is wrong and what would be right. */
  error?: string | undefined
  id?: string | undefined
}

interface FieldProps extends Labelled {
  children: (control: FieldControl) => ComponentChildren
}

/** A label over a control, with a hint and the sentence of an error bound to it. */
export const Field = ({ label, hint, error, id: given, children }: FieldProps) => {
  const made = useId()
  const id = given ?? made
  const says = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ')
  return (
    <div class={error ? 'field field-wrong' : 'field'}>
      <label for={id} class="field-label">
        {label}
      </label>
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children({ id, 'aria-describedby': says || undefined, 'aria-invalid': error ? true : undefined })}
      <FieldError id={`${id}-error`} text={error} />
    </div>
  )
}

const FieldError = ({ id, text }: { id: string; text: string | undefined }) => (
  <p class="field-error" id={id} aria-live="polite">
    {text && <Icon name="triangle-alert" size={20} />}
    {text && <span>{text}</span>}
  </p>
)

interface TextFieldProps extends Labelled {
  value: string
  onChange: (value: string) => void
  /** Several lines instead of one. */
  rows?: number | undefined
  type?: 'text' | 'date' | 'time' | 'datetime-local' | undefined
  onEnter?: (() => void) | undefined
  placeholder?: string | undefined
  disabled?: boolean | undefined
}

export const TextField = (props: TextFieldProps) => {
  const { value, onChange, rows, type = 'text', onEnter, placeholder, disabled, ...field } = props
  const shared = {
    value,
    placeholder: placeholder ?? '',
    readOnly: disabled ?? false,
    onInput: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value),
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || onEnter === undefined) return
    event.preventDefault()
    onEnter()
  }
  return (
    <Field {...field}>
      {(control) => {
        if (rows !== undefined) return <textarea {...control} {...shared} rows={rows} />
        const line = { ...control, ...shared, onKeyDown, autoComplete: 'off' as const }
        // Two branches, because the element types of text and of dates differ.
        return type === 'text' ? <input {...line} type={type} /> : <input {...line} type={type} />
      }}
    </Field>
  )
}

export interface SelectOption {
  value: string
  label: string
  disabled?: boolean | undefined
}

interface SelectFieldProps extends Labelled {
  value: string
  options: readonly SelectOption[]
  onChange: (value: string) => void
  disabled?: boolean | undefined
}

export const SelectField = ({ value, options, onChange, disabled, ...field }: SelectFieldProps) => (
  <Field {...field}>
    {(control) => (
      <span class="select">
        <select
          {...control}
          value={value}
          disabled={disabled}
          onChange={(event) => onChange(event.currentTarget.value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value} disabled={option.disabled}>
              {option.label}
            </option>
          ))}
        </select>
        <Icon name="chevron-down" />
      </span>
    )}
  </Field>
)
