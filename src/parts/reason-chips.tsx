import './chips.css'
import { PillButton } from './pill-button.tsx'

interface ReasonChipsProps {
  label: string
  /** The usual reasons, one tap each. */
  options: readonly string[]
  /** The reason so far: one of the options or free text; empty when none was given. */
  value: string
  onChange: (reason: string) => void
  /** Free text beside the chips, with this label. */
  other?: string | undefined
}

export const ReasonChips = ({ label, options, value, onChange, other }: ReasonChipsProps) => {
  return (
    <fieldset class="reasons">
      <legend class="reasons-label">{label}</legend>
      <div class="reasons-chips">
        {options.map((option) => (
          <PillButton
            key={option}
            text={option}
            selected={option === value}
            onPress={() => onChange(option === value ? '' : option)}
          />
        ))}
        {other !== undefined && (
          <input
            class="reasons-other"
            type="text"
            aria-label={other}
            placeholder={other}
            autoComplete="off"
            value={options.includes(value) ? '' : value}
            onInput={(event) => onChange(event.currentTarget.value)}
          />
        )}
      </div>
    </fieldset>
  )
}
