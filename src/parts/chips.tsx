import './chips.css'
import { classes } from './classes.ts'
import { Icon, type IconName } from './icon.tsx'

interface TimerChipProps {
  icon: IconName
  /** The small line: what it is; it names the batch only when that is another one. */
  small: string
  /** The bold line: how long. */
  bold: string
  onPress?: (() => void) | undefined
  href?: string | undefined
  /** Solid caution, waiting to be stopped. */
  ringing?: boolean | undefined
  /** The tablet's clock was changed by so much ("1 h"); the timer kept its length. */
  clockMoved?: string | undefined
  tone?: 'rim' | 'caution' | undefined
}

export const TimerChip = ({ icon, small, bold, onPress, href, ringing, clockMoved, tone = 'rim' }: TimerChipProps) => {
  const look = classes('chip', ringing ? 'chip-ringing on-solid' : `chip-${tone}`)
  const inside = (
    <>
      <Icon name={ringing ? 'bell-ring' : icon} size={26} />
      <span class="chip-words">
        <span class="chip-small">{clockMoved === undefined ? small : `${small}, clock moved ${clockMoved}`}</span>
        <span class="chip-bold">{bold}</span>
      </span>
    </>
  )
  return href === undefined ? (
    <button type="button" class={look} onClick={onPress}>
      {inside}
    </button>
  ) : (
    <a class={look} href={href}>
      {inside}
    </a>
  )
}

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
          <Pill
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

interface PillProps {
  text: string
  tone?: 'plain' | 'caution' | 'within' | 'over' | undefined
  icon?: IconName | undefined
  /** With an action the pill is a button of full height, otherwise a small mark in the text. */
  onPress?: (() => void) | undefined
  selected?: boolean | undefined
}

export const Pill = ({ text, tone = 'plain', icon, onPress, selected }: PillProps) => {
  const inside = (
    <>
      {icon && <Icon name={icon} size={18} />}
      {text}
    </>
  )
  if (onPress === undefined) return <span class={`pill pill-${tone}`}>{inside}</span>
  return (
    <button type="button" class={`pill pill-button pill-${tone}`} aria-pressed={selected ?? false} onClick={onPress}>
      {inside}
    </button>
  )
}

/** A small line over a bold one, as a button: the lot in hand, the vessel, the balance. */
export const FactButton = ({ small, bold, onPress }: { small: string; bold: string; onPress: () => void }) => (
  <button type="button" class="fact" onClick={onPress}>
    <span class="chip-small">{small}</span>
    <span class="chip-bold">{bold}</span>
  </button>
)

/** The initials of the person at work, in the corner of the strip. */
export const Initials = ({ text, name, onPress }: { text: string; name: string; onPress: () => void }) => (
  <button type="button" class="initials" aria-label={`${text}: ${name}`} onClick={onPress}>
    {text}
  </button>
)
