import './number-field.css'
import { Field } from './form.tsx'

interface NumberFieldProps {
  label: string
  value: string
  onChange: (value: string) => void
  unit?: string | undefined
  /** A sentence at the field; it stays until the text is right. */
  error?: string | undefined
  hint?: string | undefined
  /** `none` where our own pad stands beside the field, `decimal` where the tablet's keyboard shall open. */
  keyboard?: 'none' | 'decimal' | undefined
  onEnter?: (() => void) | undefined
  onLeave?: (() => void) | undefined
  large?: boolean | undefined
  disabled?: boolean | undefined
  id?: string | undefined
}

/** A number as text, for keyboard, wedge and paste; what was typed is never changed or dropped by the field. */
export const NumberField = (props: NumberFieldProps) => {
  const {
    label,
    value,
    onChange,
    unit,
    error,
    hint,
    keyboard = 'decimal',
    onEnter,
    onLeave,
    large,
    disabled,
    id,
  } = props
  return (
    <Field label={label} error={error} hint={hint} id={id}>
      {(control) => (
        <span class={large ? 'number-field number-field-large' : 'number-field'}>
          <input
            {...control}
            aria-describedby={
              [control['aria-describedby'], unit && `${control.id}-unit`].filter(Boolean).join(' ') || undefined
            }
            type="text"
            inputMode={keyboard}
            enterKeyHint="done"
            autoComplete="off"
            spellcheck={false}
            value={value}
            readOnly={disabled ?? false}
            onInput={(event) => onChange(event.currentTarget.value)}
            onBlur={onLeave}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' || onEnter === undefined) return
              event.preventDefault()
              onEnter()
            }}
          />
          {unit !== undefined && (
            <span class="number-field-unit" id={`${control.id}-unit`}>
              {unit}
            </span>
          )}
        </span>
      )}
    </Field>
  )
}
