import './pick-field.css'
import { useState } from 'preact/hooks'
import { Field } from '../../parts/form.tsx'
import { Icon } from '../../parts/icon.tsx'
import type { FieldOption } from './field-spec.ts'
import { PickSheet } from './pick-sheet.tsx'

interface PickFieldProps {
  label: string
  hint?: string | undefined
  error?: string | undefined
  value: string
  options: readonly FieldOption[]
  onChange: (value: string) => void
}

/** A choice of many: says what is chosen, and opens the list to search in. */
export const PickField = ({ value, options, onChange, ...field }: PickFieldProps) => {
  const [picking, setPicking] = useState(false)
  const chosen = options.find((option) => option.value === value)
  const pick = (next: string) => {
    setPicking(false)
    onChange(next)
  }
  return (
    <>
      <Field {...field}>
        {({ id, ...control }) => (
          <button
            type="button"
            id={id}
            class="pick"
            aria-describedby={control['aria-describedby']}
            aria-label={`${field.label}: ${chosen?.label ?? 'choose'}`}
            onClick={() => setPicking(true)}
          >
            <span class={chosen ? undefined : 'pick-none'}>{chosen?.label ?? 'choose'}</span>
            <Icon name="search" />
          </button>
        )}
      </Field>
      {picking && (
        <PickSheet
          title={field.label}
          options={options}
          value={value}
          onPick={pick}
          onClose={() => setPicking(false)}
        />
      )}
    </>
  )
}
