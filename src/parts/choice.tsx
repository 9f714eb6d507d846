import './choice.css'
import type { ComponentChildren } from 'preact'
import { useId } from 'preact/hooks'
import { Icon, type IconName } from './icon.tsx'

export interface ChoiceOption<V extends string> {
  value: V
  label: string
  sub?: string | undefined
  icon?: IconName | undefined
}

interface ChoiceProps<V extends string> {
  label: string
  value: V | undefined
  options: readonly ChoiceOption<V>[]
  onChange: (value: V) => void
  /** One under another, for options that are sentences. */
  stacked?: boolean | undefined
  /** Keeps the label for assistive technology where a heading already says it. */
  hideLabel?: boolean | undefined
}

/** One of a few, all in sight. */
export const Choice = <V extends string>({ label, value, options, onChange, stacked, hideLabel }: ChoiceProps<V>) => {
  const name = useId()
  return (
    <fieldset class={stacked ? 'choice choice-stacked' : 'choice'}>
      <legend class={hideLabel ? 'visually-hidden' : 'choice-legend'}>{label}</legend>
      <div class="choice-options">
        {options.map((option) => (
          <label key={option.value} class="choice-option">
            <input
              type="radio"
              class="choice-input"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span class="choice-tick">
              <Icon name="check" size={16} />
            </span>
            {option.icon && <Icon name={option.icon} />}
            <span class="choice-words">
              <span class="choice-label">{option.label}</span>
              {option.sub && <span class="choice-sub">{option.sub}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

interface SwitchProps {
  label: string
  hint?: string | undefined
  checked: boolean
  onChange: (checked: boolean) => void
}

/** On or off, at once. */
export const Switch = ({ label, hint, checked, onChange }: SwitchProps) => (
  <label class="switch">
    <span class="choice-words">
      <span class="choice-label">{label}</span>
      {hint && <span class="choice-sub">{hint}</span>}
    </span>
    <input
      type="checkbox"
      role="switch"
      aria-checked={checked}
      checked={checked}
      onChange={(event) => onChange(event.currentTarget.checked)}
    />
    <span class="switch-word" aria-hidden="true">
      {checked ? 'on' : 'off'}
    </span>
  </label>
)

interface RowProps {
  label: string
  sub?: string | undefined
  /** What stands at the right end. */
  value?: string | undefined
  icon?: IconName | undefined
  href?: string | undefined
  onPress?: (() => void) | undefined
  children?: ComponentChildren
}

/** A line of a list: 56 px, pressable when it leads somewhere. */
export const Row = ({ label, sub, value, icon, href, onPress, children }: RowProps) => {
  const inside = (
    <>
      {icon && <Icon name={icon} />}
      <span class="choice-words">
        <span class="choice-label">{label}</span>
        {sub && <span class="choice-sub">{sub}</span>}
      </span>
      {value && <span class="row-value">{value}</span>}
    </>
  )
  if (href !== undefined)
    return (
      <a class="row" href={href}>
        {inside}
        <Icon name="chevron-right" />
      </a>
    )
  if (onPress !== undefined)
    return (
      <button type="button" class="row" onClick={onPress}>
        {inside}
        <Icon name="chevron-right" />
      </button>
    )
  return (
    <div class="row">
      {inside}
      {children}
    </div>
  )
}
