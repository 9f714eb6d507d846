import './chips.css'
import { Icon, type IconName } from './icon.tsx'

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
