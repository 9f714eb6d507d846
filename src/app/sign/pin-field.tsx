import { Field } from '../../parts/form'

interface PinFieldProps {
  label: string
  value: string
  onChange: (pin: string) => void
  hint?: string | undefined
  error?: string | undefined
  onEnter?: (() => void) | undefined
}

/** Digits nobody reads over a shoulder. No browser is to remember them. */
export const PinField = ({ value, onChange, onEnter, ...field }: PinFieldProps) => (
  <Field {...field}>
    {(control) => (
      <input
        {...control}
        type="password"
        inputMode="numeric"
        autoComplete="one-time-code"
        maxLength={12}
        value={value}
        onInput={(event) => onChange(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || onEnter === undefined) return
          event.preventDefault()
          onEnter()
        }}
      />
    )}
  </Field>
)
