import './typed-field.css'
import { useId } from 'preact/hooks'
import { classes } from '../../parts/classes'
import { useRun } from './run-context'

interface TypedFieldProps {
  name: string
  label: string
  unit?: string | undefined
  /** Stands in the empty field: the value that counts where nothing is typed. */
  placeholder?: string | undefined
  error?: string | undefined
  onEnter?: (() => void) | undefined
}

/** A number of the step in hand: typed on the pad while it is the active field, or by keyboard, paste and wedge. */
export function TypedField({ name, label, unit, placeholder, error, onEnter }: TypedFieldProps) {
  const run = useRun()
  const id = useId()
  const active = run.activeField.value === name
  return (
    <div class={classes('typed', active && 'typed-active', error && 'typed-wrong')}>
      <label class="typed-label" for={id}>
        {label}
      </label>
      <span class="typed-line">
        <NumberInput
          id={id}
          name={name}
          placeholder={placeholder}
          errorId={error ? `${id}-error` : undefined}
          onEnter={onEnter}
        />
        {unit && (
          <span class="typed-unit" aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      {error && (
        <span class="typed-error" id={`${id}-error`}>
          {error}
        </span>
      )}
    </div>
  )
}

interface NumberInputProps {
  id?: string | undefined
  name: string
  label?: string | undefined
  placeholder?: string | undefined
  errorId?: string | undefined
  class?: string | undefined
  onEnter?: (() => void) | undefined
}

/** The bare field. On a touch screen our own pad types into it, so the tablet's keyboard stays away. */
export function NumberInput({ id, name, label, placeholder, errorId, class: look, onEnter }: NumberInputProps) {
  const run = useRun()
  return (
    <input
      id={id}
      name={name}
      class={look}
      type="text"
      aria-label={label}
      aria-invalid={errorId === undefined ? undefined : true}
      aria-describedby={errorId}
      placeholder={placeholder ?? ''}
      inputMode={hasTouch() ? 'none' : 'decimal'}
      enterKeyHint="done"
      autoComplete="off"
      spellcheck={false}
      value={run.draft.value.fields[name] ?? ''}
      onFocus={() => {
        run.activeField.value = name
      }}
      onInput={(event) => run.type(name, event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && onEnter) {
          event.preventDefault()
          onEnter()
        } else if (/^[npu]$/i.test(event.key) && !event.ctrlKey && !event.metaKey) {
          // Letters mean nothing in a number: they keep their meaning on the page.
          event.preventDefault()
          event.currentTarget.blur()
          document.dispatchEvent(new KeyboardEvent('keydown', { key: event.key }))
        }
      }}
    />
  )
}

const hasTouch = (): boolean => matchMedia('(pointer: coarse)').matches
