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
  tone?: 'rim' | 'caution' | undefined
}

export const TimerChip = ({ icon, small, bold, onPress, href, ringing, tone = 'rim' }: TimerChipProps) => {
  const look = classes('chip', ringing ? 'chip-ringing on-solid' : `chip-${tone}`)
  const inside = (
    <>
      <Icon name={ringing ? 'bell-ring' : icon} size={26} />
      <span class="chip-words">
        <span class="chip-small">{small}</span>
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
