import './pick-field.css'
import type { ComponentChildren } from 'preact'
import { useMemo, useState } from 'preact/hooks'
import { TextField } from '../../parts/form.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import type { FieldOption } from './field-spec.ts'

interface PickSheetProps {
  title: string
  options: readonly FieldOption[]
  value: string
  onPick: (value: string) => void
  onClose: () => void
  /** What else may be done with what was typed to find by. */
  more?: ((typed: string) => ComponentChildren) | undefined
}

/** So many are drawn at once; typing finds the others. */
const mostRows = 60

/** One of a long list: typed for, then pressed. Enter takes the first that is found. */
export const PickSheet = ({ title, options, value, onPick, onClose, more }: PickSheetProps) => {
  const [typed, setTyped] = useState('')
  const found = useMemo(() => matching(options, typed), [options, typed])
  const first = found[0]
  return (
    <Sheet title={title} onClose={onClose}>
      <TextField
        label="Find"
        value={typed}
        onChange={setTyped}
        onEnter={() => typed.trim() !== '' && first && onPick(first.value)}
      />
      <ul class="pick-rows" aria-label={title}>
        {found.slice(0, mostRows).map((option) => (
          <li key={option.value}>
            <button
              type="button"
              class="pick-row"
              aria-pressed={option.value === value}
              onClick={() => onPick(option.value)}
            >
              <span class="pick-words">
                <span class="pick-label">{option.label}</span>
                {option.sub && <span class="pick-sub">{option.sub}</span>}
              </span>
              {option.value === value && <Icon name="check" />}
            </button>
          </li>
        ))}
      </ul>
      <p class="pick-none" aria-live="polite">
        {found.length === 0 && 'Nothing of that name.'}
        {found.length > mostRows && `${found.length - mostRows} more: type part of the name.`}
      </p>
      {more?.(typed.trim())}
    </Sheet>
  )
}

/** Those whose words hold all that was typed; where it begins a name, that name first. */
function matching(options: readonly FieldOption[], typed: string): readonly FieldOption[] {
  const wanted = typed.trim().toLowerCase().split(/\s+/).filter(Boolean)
  if (wanted.length === 0) return options
  const start = wanted.join(' ')
  const textOf = ({ label, sub = '' }: FieldOption) => `${label} ${sub}`.toLowerCase()
  const isFirst = ({ label }: FieldOption) => (label.toLowerCase().startsWith(start) ? 0 : 1)
  return options
    .filter((option) => wanted.every((word) => textOf(option).includes(word)))
    .toSorted((a, b) => isFirst(a) - isFirst(b))
}
